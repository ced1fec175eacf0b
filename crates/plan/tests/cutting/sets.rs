//! Generated cases of fixed seed, shared by the tests and the benchmark.
//!
//! What it is: invented cases shaped like wig rows, and harder ones. What it is not: published data (see `cases/cutting`).

use plan::cutting::{Case, Demand, Pack};

/// A small xorshift with a fixed seed.
pub struct Draw(u64);

impl Draw {
    /// A sequence of its own for each seed.
    pub fn new(seed: u64) -> Self {
        let mut draw = Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
        for _ in 0..8 {
            draw.next();
        }
        draw
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 11
    }

    /// A whole number from `lo` to `hi`, both included.
    pub fn pick(&mut self, lo: u32, hi: u32) -> u32 {
        lo + (self.next() % u64::from(hi - lo + 1)) as u32
    }
}

/// A named case of a set.
pub struct Sample {
    /// Set, pieces, kinds and seed.
    pub name: String,
    /// The case.
    pub case: Case,
}

const WIG: [(u32, u64); 4] = [(2600, 1899), (1500, 1199), (1000, 849), (3200, 2249)];
const HARD: [(u32, u64); 4] = [(1000, 1450), (700, 1090), (500, 845), (1200, 1690)];

struct Shape {
    set: &'static str,
    packs: [(u32, u64); 4],
    pieces_mm: (u32, u32),
    cut_loss_mm: u32,
    /// Whether packs bring several lengths and some lengths are owned.
    mixed: bool,
}

fn sample(shape: &Shape, n: u32, kinds: usize, seed: u64) -> Sample {
    let mut draw = Draw::new(seed * 1_000_003 + u64::from(n) * 101 + kinds as u64);
    let packs = shape.packs[..kinds].iter().enumerate().map(|(i, &(length_mm, price))| {
        let (pieces, owned) = if shape.mixed { (draw.pick(1, 4), draw.pick(0, 4)) } else { (1, 0) };
        // A pack of several lengths is a little cheaper than as many single ones.
        let price = price * u64::from(pieces) * (100 - 4 * u64::from(pieces - 1)) / 100;
        Pack { name: format!("kind {i}"), length_mm, pieces, price, owned }
    });
    let packs = packs.collect();
    let (lo, hi) = shape.pieces_mm;
    let pieces = (0..n).map(|_| Demand { length_mm: draw.pick(lo, hi), count: 1 }).collect();
    Sample {
        name: format!("{}_{n:03}_{kinds}_{seed}", shape.set),
        case: Case::new(packs, pieces, shape.cut_loss_mm).expect("a generated case is valid"),
    }
}

fn set(shape: &Shape, sizes: &[u32]) -> Vec<Sample> {
    let one = |(n, kinds, seed)| sample(shape, n, kinds, seed);
    let seeds = |n: u32| (1..=4).flat_map(move |kinds| (0..5).map(move |seed| (n, kinds, seed)));
    sizes.iter().flat_map(|&n| seeds(n)).map(one).collect()
}

/// Rows of a wig: 5 to 200 pieces of 70 to 370 mm from long wefts.
pub fn wig_like() -> Vec<Sample> {
    let shape = Shape { set: "wig", packs: WIG, pieces_mm: (70, 370), cut_loss_mm: 0, mixed: false };
    set(&shape, &[5, 10, 20, 40, 80, 120, 200])
}

/// Few pieces to a length and a loss at each cut: little room to choose.
pub fn hard(sizes: &[u32]) -> Vec<Sample> {
    let shape = Shape { set: "hard", packs: HARD, pieces_mm: (150, 380), cut_loss_mm: 3, mixed: false };
    set(&shape, sizes)
}

/// Wig rows from packs of one to four lengths, with some lengths owned.
pub fn wig_mixed(sizes: &[u32]) -> Vec<Sample> {
    let shape = Shape { set: "wigmix", packs: WIG, pieces_mm: (70, 370), cut_loss_mm: 0, mixed: true };
    set(&shape, sizes)
}

/// The hard set from packs of one to four lengths, with some lengths owned.
pub fn hard_mixed(sizes: &[u32]) -> Vec<Sample> {
    let shape = Shape { set: "hardmix", packs: HARD, pieces_mm: (150, 380), cut_loss_mm: 3, mixed: true };
    set(&shape, sizes)
}
