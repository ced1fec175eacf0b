//! What six tapes do not say about a head: the fixed proportions of the dome, each with where it comes from.
//!
//! What it is: one table of constants in mm on a head of [`REFERENCE_GIRTH`], scaled with the girth.
//! What it is not: a limit on input (see `measures`).

/// Girth in mm at which the lengths below hold. They grow with the girth.
pub(super) const REFERENCE_GIRTH: f64 = 560.0;

/// Breadth abreast of the ears over length; with [`TAPER`] the greatest breadth is 0.776 of the length. Surveys:
/// 144.4/187.2 = 0.771 (ANSUR 1988, women), 147.8/189.8 = 0.779 and 154.3/199.5 = 0.773 (ANSUR II 2012, women, men),
/// 156.0/198.7 = 0.785 (USAF 1967, men).
pub(super) const BREADTH_TO_LENGTH: f64 = 0.764;

/// How much narrower the forehead is than the back of the head, chosen so that the tape tragus to tragus across a hairline
/// 41.7 mm below the top comes near the 307.5 mm of ANSUR 1988 women.
pub(super) const TAPER: f64 = 0.10;

/// Height of the girth tape above the tragus: the level at which the back of an averaged scalp is widest (own computation
/// on the averaged MRI scalp `fsaverage` shipped with MNE-Python).
pub(super) const GIRTH_ABOVE_TRAGUS: f64 = 40.0;

/// Top of the ear above the tragus. ANSUR 1988 men 31.9, USAF 1967 men 29.4.
pub(super) const EAR_ABOVE_TRAGUS: f64 = 30.0;

/// Front hairline below the top of the head: ANSUR 1988 women, mean and standard deviation.
pub(super) const HAIRLINE_BELOW_TOP: (f64, f64) = (41.7, 9.5);

/// How many standard deviations the hairline may leave its mean to meet the tape.
pub(super) const HAIRLINE_REACH: f64 = 2.5;

/// Least height of the front hairline above the girth tape. Our assumption: keeps forehead below the hairline.
pub(super) const HAIRLINE_LEAST: f64 = 14.0;

/// Depth below the girth tape at which the neck would close, at a nape width of a quarter of the girth; fitted to row
/// lengths behind the ears on the averaged scalp named above.
pub(super) const NECK_DROP: f64 = 140.0;

/// Nape width over girth at which [`NECK_DROP`] holds, and how strongly a wider nape makes a fuller neck. Common practice
/// (14 cm on a 56 cm head), no source; the second is our assumption.
pub(super) const NAPE_TO_GIRTH: (f64, f64) = (0.25, 0.6);

/// Nape edge below the girth tape: least, and greatest as a share of the neck's drop. Our assumption.
pub(super) const NAPE_DEPTH: (f64, f64) = (68.0, 0.80);

/// How far the nape edge rises from its middle to its corners. Our assumption.
pub(super) const NAPE_RISE: f64 = 14.0;

/// Depth of the front hairline zone behind the edge. Not scaled. Common practice (10–30 mm), no source.
pub(super) const HAIRLINE_STRIP: f64 = 20.0;

/// Above this plane top and crown begin, below it sides and back: its height over the girth tape abreast of the ears, and
/// how much it sinks towards the front. Common practice, no source; shares of the zones compared in the tests.
pub(super) const UPPER: (f64, f64) = (55.0, 0.2);

/// The plane lies at most this far above the front hairline (abreast of the ears), so that side rows have a front edge to
/// end at.
pub(super) const UPPER_OVER_HAIRLINE: f64 = 10.0;

/// Side zones end this far behind the tragus, behind the ear. Common practice, no source.
pub(super) const SIDE_BEHIND_TRAGUS: f64 = 34.0;

/// How far the hairline rises from its middle to the temple corners. Our assumption.
pub(super) const RECESSION: f64 = 8.0;

/// One mark of the cap edge round the ear.
pub(super) struct EarMark {
    /// In front of the tragus, mm.
    pub(super) forward: f64,
    /// Above the tragus, mm.
    pub(super) above: f64,
    /// Steps of the mesh up to it.
    pub(super) steps: usize,
}

const fn mark(forward: f64, above: f64, steps: usize) -> EarMark {
    EarMark { forward, above, steps }
}

/// The edge from below the temple corner over sideburn tab and ear notch to behind the ear. Common practice, no source, but
/// for the height of the notch ([`EAR_ABOVE_TRAGUS`]).
pub(super) const EAR_EDGE: [EarMark; 7] = [
    mark(24.0, GIRTH_ABOVE_TRAGUS, 8),
    mark(18.0, 4.0, 6),
    mark(8.0, 4.0, 2),
    mark(3.0, 25.0, 3),
    mark(-4.0, EAR_ABOVE_TRAGUS, 2),
    mark(-25.0, 12.0, 3),
    mark(-40.0, -15.0, 2),
];
