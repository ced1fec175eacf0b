//! Inequalities, supplies and packings, as the parts of the solver hand them to each other.
//!
//! What it is: small values. What it is not: anything a caller sees.

/// A valid inequality over the classes: a supply whose carried weight is below `need` cannot hold the pieces.
#[derive(Clone, Debug)]
pub struct Cut {
    pub weights: Vec<u64>,
    pub maxima: Vec<u64>,
    pub need: u64,
}

impl Cut {
    pub fn new(weights: Vec<u64>, maxima: Vec<u64>, counts: &[u32]) -> Self {
        let need = weights.iter().zip(counts).map(|(w, &d)| w * u64::from(d)).sum();
        Self { weights, maxima, need }
    }

    pub fn broken_by(&self, supply: &[u32]) -> bool {
        let carried: u64 = self.maxima.iter().zip(supply).map(|(w, &n)| w * u64::from(n)).sum();
        carried < self.need
    }
}

/// Pieces to place and lengths to place them in.
#[derive(Clone, Debug)]
pub struct Job {
    /// Capacities, longest first.
    pub caps: Vec<u32>,
    /// Lengths of each capacity.
    pub supply: Vec<u32>,
    /// Different sizes, longest first.
    pub sizes: Vec<u32>,
    /// How many of each.
    pub counts: Vec<u32>,
}

impl Job {
    pub fn room(&self) -> u64 {
        self.caps.iter().zip(&self.supply).map(|(&c, &n)| u64::from(c) * u64::from(n)).sum()
    }

    pub fn need(&self) -> u64 {
        self.sizes.iter().zip(&self.counts).map(|(&s, &d)| u64::from(s) * u64::from(d)).sum()
    }

    pub fn pieces(&self) -> u32 {
        self.counts.iter().sum()
    }

    pub fn bars(&self) -> u32 {
        self.supply.iter().sum()
    }
}

/// One length with its pieces (indices of sizes, longest first).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Load {
    pub class: usize,
    pub items: Vec<usize>,
}

/// Loads that are not empty.
pub type Packing = Vec<Load>;
