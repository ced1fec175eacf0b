//! The uncertain inputs of the weft sum, each to be taken at its low, likely or high end.
//!
//! Each moves the sum one way only, so that the ends of a few corners bound it: that is why the root side stands here twice.
//!
//! What it is: the one list of them, so that a bound can be reproduced by name.
//! What it is not: the sum (see `fullness` and `wefts`).

use measure::quantity::{ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, Ratio};
use record::{
    wig::{figure::Figure, figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

/// An uncertain input.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Input {
    /// The head's measures, all together.
    Head,
    /// The whole wig's weight.
    WholeWeight,
    /// The cap's weight.
    CapWeight,
    /// Crimped filler.
    Crimped,
    /// Fineness of the base's fibre.
    Fineness,
    /// The root side of the base's strands.
    Return,
    /// Hanging lengths of the base.
    Lengths,
    /// Spacing of the base's rows.
    Spacing,
    /// Fullness of knotted and closed zones.
    GroundFullness,
    /// A pack's weight.
    PackWeight,
    /// A pack's stitched width.
    PackWidth,
    /// The weft's hanging length.
    WeftLength,
    /// Fineness of the weft's fibre.
    WeftFineness,
    /// The root side of the weft's strands.
    WeftReturn,
    /// Strands on a cm of weft, where counted.
    WeftStrands,
    /// End folds, cutting loss and spare.
    Allowances,
}

impl Input {
    /// All of them.
    pub const ALL: [Input; 16] = [
        Input::Head,
        Input::WholeWeight,
        Input::CapWeight,
        Input::Crimped,
        Input::Fineness,
        Input::Return,
        Input::Lengths,
        Input::Spacing,
        Input::GroundFullness,
        Input::PackWeight,
        Input::PackWidth,
        Input::WeftLength,
        Input::WeftFineness,
        Input::WeftReturn,
        Input::WeftStrands,
        Input::Allowances,
    ];

    /// Whether it acts through the fullness of the base alone: not on the cap's rows, and not on the weft.
    pub fn own_fullness(self) -> bool {
        matches!(
            self,
            Input::WholeWeight
                | Input::CapWeight
                | Input::Crimped
                | Input::Fineness
                | Input::Return
                | Input::Lengths
                | Input::GroundFullness
        )
    }

    /// Key of the words "weigh the wig without its cap" and the like: what would settle it.
    pub fn settle(self) -> &'static str {
        match self {
            Input::Head => "settle.head",
            Input::WholeWeight => "settle.whole_weight",
            Input::CapWeight => "settle.cap_weight",
            Input::Crimped => "settle.crimped",
            Input::Fineness => "settle.fineness",
            Input::Return => "settle.return",
            Input::Lengths => "settle.lengths",
            Input::Spacing => "settle.spacing",
            Input::GroundFullness => "settle.ground_fullness",
            Input::PackWeight => "settle.pack_weight",
            Input::PackWidth => "settle.pack_width",
            Input::WeftLength => "settle.weft_length",
            Input::WeftFineness => "settle.weft_fineness",
            Input::WeftReturn => "settle.weft_return",
            Input::WeftStrands => "settle.weft_strands",
            Input::Allowances => "settle.allowances",
        }
    }
}

/// Which end of an input.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// The low end.
    Low,
    /// The likely figure.
    #[default]
    Likely,
    /// The high end.
    High,
}

/// A corner: an end for every input.
///
/// Ends are kept zone by zone: a heavier base asks more of a zone told in multiples and less of one told in strands, so that
/// a bound may take [the base's own inputs](Input::own_fullness) at other ends for other zones. All other ends are alike.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Corner([[End; Input::ALL.len()]; Zone::ALL.len()]);

impl Corner {
    /// Everything likely.
    pub fn likely() -> Corner {
        Corner::default()
    }

    /// The same corner with one input at another end.
    #[must_use]
    pub fn with(self, input: Input, end: End) -> Corner {
        self.with_for(&Zone::ALL, input, end)
    }

    /// The same for some zones only, where the input acts through the base's own fullness alone; else for all.
    #[must_use]
    pub fn with_for(mut self, zones: &[Zone], input: Input, end: End) -> Corner {
        let zones = if input.own_fullness() { zones } else { &Zone::ALL };
        for zone in zones {
            self.0[*zone as usize][input as usize] = end;
        }
        self
    }

    /// The end an input is taken at; one that differs from zone to zone, as for the first (see [`Corner::of`]).
    pub fn end(&self, input: Input) -> End {
        self.0[0][input as usize]
    }

    /// The end an input is taken at for a zone.
    pub fn end_for(&self, zone: Zone, input: Input) -> End {
        self.0[zone as usize][input as usize]
    }

    /// The corner with every end as it is for one zone.
    #[must_use]
    pub fn of(&self, zone: Zone) -> Corner {
        Corner([self.0[zone as usize]; Zone::ALL.len()])
    }

    /// The figure at this corner, read as [`Corner::end`] reads.
    pub fn pick<Q: Copy>(&self, input: Input, figure: &Figure<Q>) -> Q {
        match self.end(input) {
            End::Low => figure.low,
            End::Likely => figure.likely,
            End::High => figure.high,
        }
    }
}

/// The base's figures at a corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Base {
    /// The whole wig.
    pub whole_weight: Mass,
    /// The cap.
    pub cap_weight: Mass,
    /// Crimped share.
    pub crimped: Ratio,
    /// Fineness.
    pub fineness: LinearMassDensity,
    /// Root side.
    pub fibre_return: Length,
    /// Shortest strand of each zone.
    pub shortest: [Length; 8],
    /// Longest strand of each zone.
    pub longest: [Length; 8],
    /// Row spacing of each wefted zone.
    pub spacing: [Option<Length>; 8],
    /// Rows counted in a zone, which beat the spacing.
    pub rows_counted: [Option<u32>; 8],
    /// Fullness of each knotted or closed zone.
    pub ground: [Option<ArealNumberDensity>; 8],
}

impl Base {
    /// Reads a wig at a corner.
    pub fn at(wig: &Wig<'_>, corner: &Corner) -> Base {
        Base {
            whole_weight: corner.pick(Input::WholeWeight, &wig.whole_weight()),
            cap_weight: corner.pick(Input::CapWeight, &wig.cap_weight()),
            crimped: corner.pick(Input::Crimped, &wig.crimped_share()),
            fineness: corner.pick(Input::Fineness, &wig.fineness()),
            fibre_return: corner.pick(Input::Return, &wig.fibre_return()),
            shortest: Zone::ALL.map(|zone| corner.pick(Input::Lengths, &wig.shortest(zone))),
            longest: Zone::ALL.map(|zone| corner.pick(Input::Lengths, &wig.longest(zone))),
            spacing: Zone::ALL.map(|zone| wig.row_spacing(zone).map(|spacing| corner.pick(Input::Spacing, &spacing))),
            rows_counted: Zone::ALL.map(|zone| wig.rows_counted(zone)),
            ground: Zone::ALL
                .map(|zone| wig.ground_fullness(zone).map(|ground| corner.pick(Input::GroundFullness, &ground))),
        }
    }

    /// Mean hanging length of a zone.
    pub fn mean_length(&self, zone: Zone) -> Length {
        (self.shortest[zone as usize] + self.longest[zone as usize]) / 2.0
    }
}

/// A weft's figures at a corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Weft {
    /// Strands on a length of it.
    pub strands: LinearNumberDensity,
    /// Hanging length.
    pub hanging: Length,
    /// Mass of a length of it.
    pub mass_per_length: LinearMassDensity,
    /// One piece of a pack.
    pub piece: Length,
    /// Pieces in a pack.
    pub pieces: u32,
}

impl Weft {
    /// Reads a lot at a corner. `parted`: double weft taken apart into two singles.
    ///
    /// Mass divided by hanging length (and root side) counts both legs of folded fibre already.
    pub fn at(lot: &Lot, fibre_return: &Figure<Length>, parted: bool, corner: &Corner) -> Weft {
        let fibre_return = corner.pick(Input::WeftReturn, fibre_return);
        let weight = corner.pick(Input::PackWeight, &lot.weight);
        let width = corner.pick(Input::PackWidth, &lot.width);
        let hanging = corner.pick(Input::WeftLength, &lot.hanging);
        let fineness = corner.pick(Input::WeftFineness, &lot.fineness);
        let mass_per_length = weight / width;
        let strands = match &lot.strands {
            Some(counted) => corner.pick(Input::WeftStrands, counted),
            None => (mass_per_length / ((hanging + fibre_return) * fineness)).into(),
        };
        let piece = width / f64::from(lot.pieces);
        if parted {
            Weft {
                strands: strands * 0.5,
                hanging,
                mass_per_length: mass_per_length * 0.5,
                piece: piece * 2.0,
                pieces: lot.pieces,
            }
        } else {
            Weft { strands, hanging, mass_per_length, piece, pieces: lot.pieces }
        }
    }
}
