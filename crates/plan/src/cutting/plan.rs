//! The answer: bars, what to buy, how sure it is, and what another program needs to check it.
//!
//! What it is: plain values. What it is not: words for a screen or a drawing.

/// One length of weft and what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Which pack of the case it is a length of (index).
    pub pack: usize,
    /// Whether it was owned already; otherwise it comes from a bought pack.
    pub owned: bool,
    /// The pieces cut from it, longest first; empty for a length that a bought pack brings and nobody needs.
    pub pieces_mm: Vec<u32>,
    /// What is left of it, in millimetres, after the cuts between neighbours.
    pub offcut_mm: u32,
}

/// Which argument closed the question of the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Closed {
    /// Nothing is paid, and nothing is cheaper than that.
    NothingToPay,
    /// Every cheaper mix of packs breaks an inequality of the certificate.
    Inequalities,
    /// As before, but some cheaper mixes (listed in the certificate) were searched to the end.
    Searched,
    /// Not closed: some cheaper mix was neither filled nor refuted.
    Open,
}

impl Closed {
    /// The argument in one plain English sentence part.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::NothingToPay => "nothing is paid, and nothing is cheaper than that",
            Self::Inequalities => "every cheaper mix of packs is too short, shown by sums that anyone can repeat",
            Self::Searched => "every cheaper mix of packs is too short, some of them tried in every way",
            Self::Open => "best found; a cheaper mix of packs could neither be filled nor ruled out",
        }
    }
}

/// A valid inequality: each piece weighs something, and a length of a pack can carry at most so much weight.
///
/// A mix of lengths in which the sum of the maxima is below the weight of all pieces cannot hold them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Inequality {
    /// Weight of one piece, for each entry of [`Certificate::lengths_mm`].
    pub weights: Vec<u64>,
    /// The most weight that one length of each pack of the case can carry (no more of a piece than is wanted of it).
    pub maxima: Vec<u64>,
}

/// What an independent checker needs to repeat the proof of the price.
///
/// The claim: every mix of bought packs cheaper than [`Plan::lower_bound`], together with all owned lengths, breaks one of
/// the inequalities or is no better than one of `searched`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Certificate {
    /// The different lengths of piece, in millimetres, longest first.
    pub lengths_mm: Vec<u32>,
    /// How many pieces of each length.
    pub counts: Vec<u32>,
    /// The inequalities.
    pub inequalities: Vec<Inequality>,
    /// Mixes (packs bought, for each pack of the case) that were searched to the end without an answer.
    pub searched: Vec<Vec<u32>>,
}

/// The cutting plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Price of all packs bought, in the smallest money unit.
    pub total_price: u64,
    /// No plan can cost less than this.
    pub lower_bound: u64,
    /// Whether the price is proved least: then the bound equals it.
    pub proved: bool,
    /// Which argument closed the price, or that none did.
    pub closed: Closed,
    /// Packs to buy, for each pack of the case.
    pub bought: Vec<u32>,
    /// Owned lengths used, for each pack of the case.
    pub owned_used: Vec<u32>,
    /// Whether no plan of this price uses fewer owned lengths. The longest offcut is sought, never claimed.
    pub owned_proved: bool,
    /// The lengths, each with its pieces.
    pub bars: Vec<Bar>,
    /// What another program needs to check the price.
    pub certificate: Certificate,
}

impl Plan {
    /// The longest single offcut, in millimetres; whole lengths that a bought pack brings too many count.
    #[must_use]
    pub fn longest_offcut_mm(&self) -> u32 {
        self.bars.iter().map(|bar| bar.offcut_mm).max().unwrap_or(0)
    }
}
