//! The question as it was asked: packs, pieces and the loss of a cut, parsed so that it cannot hold nonsense.
//!
//! What it is: the parsing constructor with its named limits. What it is not: a file format.

use std::fmt;

use measure::order;

/// The limits of a case, each named once. They keep every sum of the solver inside 64 bits.
pub mod limit {
    /// Longest length or piece, in millimetres (100 m).
    pub const LENGTH_MM: u32 = 100_000;
    /// Most pieces in all.
    pub const PIECES: u32 = 10_000;
    /// Most lengths in one pack.
    pub const PACK_PIECES: u32 = 1_000;
    /// Highest price of a pack, in the smallest money unit.
    pub const PRICE: u64 = 1_000_000_000;
    /// Most owned lengths of one kind.
    pub const OWNED: u32 = 10_000;
    /// Most kinds of pack.
    pub const KINDS: usize = 50;
    /// Most that one cut may lose, in millimetres.
    pub const CUT_LOSS_MM: u32 = 1_000;
}

/// A kind of pack: what it costs, what it brings, what of it is already owned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pack {
    /// What the pack is called; no two packs of a case share a name.
    pub name: String,
    /// Length of each piece of weft in it, in millimetres, 1 to [`limit::LENGTH_MM`].
    pub length_mm: u32,
    /// Lengths that a bought pack brings, at most [`limit::PACK_PIECES`]; 0 means it is not for sale.
    pub pieces: u32,
    /// Price of a whole pack in the smallest money unit, at most [`limit::PRICE`]; 0 is allowed.
    pub price: u64,
    /// Free single lengths at hand beside any pack bought, at most [`limit::OWNED`].
    pub owned: u32,
}

/// Pieces wanted of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demand {
    /// Length of the piece in millimetres, 1 to [`limit::LENGTH_MM`].
    pub length_mm: u32,
    /// How many of it, at least 1.
    pub count: u32,
}

/// What is wrong with a case: the field, its value and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CaseError {
    /// The field as a path, such as `packs[0].length_mm`.
    pub field: String,
    /// The value that was given.
    pub value: String,
    /// What to give instead.
    pub remedy: String,
}

impl fmt::Display for CaseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} is {}: {}", self.field, self.value, self.remedy)
    }
}

impl std::error::Error for CaseError {}

/// A case that can be asked: every number inside its limit, every piece no longer than some length there is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Case {
    packs: Vec<Pack>,
    pieces: Vec<Demand>,
    cut_loss_mm: u32,
}

impl Case {
    /// Parses a case.
    ///
    /// # Errors
    /// Every problem found, each with field, value and remedy.
    pub fn new(packs: Vec<Pack>, pieces: Vec<Demand>, cut_loss_mm: u32) -> Result<Self, Vec<CaseError>> {
        let mut faults = Faults(Vec::new());
        faults.packs(&packs);
        faults.pieces(&pieces, &packs);
        if cut_loss_mm > limit::CUT_LOSS_MM {
            let remedy = format!("give 0 to {} mm lost by each cut", limit::CUT_LOSS_MM);
            faults.add("cut_loss_mm".into(), cut_loss_mm, remedy);
        }
        if faults.0.is_empty() { Ok(Self { packs, pieces, cut_loss_mm }) } else { Err(faults.0) }
    }

    /// The kinds of pack, in the order given.
    #[must_use]
    pub fn packs(&self) -> &[Pack] {
        &self.packs
    }

    /// The pieces wanted, in the order given.
    #[must_use]
    pub fn pieces(&self) -> &[Demand] {
        &self.pieces
    }

    /// Millimetres lost between two neighbours cut from the same length.
    #[must_use]
    pub fn cut_loss_mm(&self) -> u32 {
        self.cut_loss_mm
    }
}

struct Faults(Vec<CaseError>);

impl Faults {
    fn add(&mut self, field: String, value: impl fmt::Display, remedy: impl Into<String>) {
        self.0.push(CaseError { field, value: value.to_string(), remedy: remedy.into() });
    }

    fn packs(&mut self, packs: &[Pack]) {
        if packs.is_empty() || packs.len() > limit::KINDS {
            let remedy = format!("give 1 to {} kinds of pack", limit::KINDS);
            self.add("packs".into(), format!("{} kinds", packs.len()), remedy);
        }
        let mut names: Vec<&str> = Vec::new();
        for (i, pack) in packs.iter().enumerate() {
            let field = |name: &str| format!("packs[{i}].{name}");
            if pack.name.trim().is_empty() {
                self.add(field("name"), "empty", "give the pack a name");
            } else if !order::add_new(&mut names, pack.name.as_str()) {
                self.add(field("name"), format!("\"{}\" again", pack.name), "give each pack a name of its own");
            }
            self.length(field("length_mm"), pack.length_mm);
            if pack.pieces > limit::PACK_PIECES {
                let remedy = format!("give 0 (not for sale) to {} lengths in a pack", limit::PACK_PIECES);
                self.add(field("pieces"), pack.pieces, remedy);
            }
            if pack.price > limit::PRICE {
                let remedy = format!("give 0 to {} of the smallest money unit", limit::PRICE);
                self.add(field("price"), pack.price, remedy);
            }
            if pack.owned > limit::OWNED {
                self.add(field("owned"), pack.owned, format!("give 0 to {} owned lengths", limit::OWNED));
            }
        }
    }

    fn pieces(&mut self, pieces: &[Demand], packs: &[Pack]) {
        let total: u64 = pieces.iter().map(|d| u64::from(d.count)).sum();
        if pieces.is_empty() {
            self.add("pieces".into(), "empty", "give at least one piece to cut");
        }
        if total > u64::from(limit::PIECES) {
            let remedy = format!("give at most {} pieces in all; split the work into parts", limit::PIECES);
            self.add("pieces".into(), format!("{total} pieces in all"), remedy);
        }
        let there = packs.iter().filter(|p| p.pieces > 0 || p.owned > 0);
        let longest = there.max_by_key(|p| p.length_mm);
        for (i, demand) in pieces.iter().enumerate() {
            let field = |name: &str| format!("pieces[{i}].{name}");
            self.length(field("length_mm"), demand.length_mm);
            if demand.count == 0 {
                self.add(field("count"), 0, "give at least 1, or leave the piece out");
            }
            if (1..=limit::LENGTH_MM).contains(&demand.length_mm) {
                match longest {
                    Some(pack) if demand.length_mm > pack.length_mm => {
                        let remedy = format!(
                            "the longest length there is, \"{}\", has {} mm: add a longer pack, shorten the piece or join it",
                            pack.name, pack.length_mm
                        );
                        self.add(field("length_mm"), format!("{} mm", demand.length_mm), remedy);
                    }
                    None if !packs.is_empty() => {
                        let remedy =
                            "no length is owned and no pack is for sale: add a pack with pieces, or owned lengths";
                        self.add(field("length_mm"), format!("{} mm", demand.length_mm), remedy);
                    }
                    _ => {}
                }
            }
        }
    }

    fn length(&mut self, field: String, value: u32) {
        if !(1..=limit::LENGTH_MM).contains(&value) {
            self.add(field, format!("{value} mm"), format!("give 1 to {} mm", limit::LENGTH_MM));
        }
    }
}
