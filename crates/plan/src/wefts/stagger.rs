//! Few rows laid so that each zone gets its own share.
//!
//! What it is: which gaps a few rows take, how long each is and whether it lies towards an ear, sought by small moves from an
//! even start. What it is not: the placing of many rows, which come out even by themselves (see `share`).

use record::wig::zone::Zone;

/// More rows than this are placed evenly instead.
pub(super) const MOST: usize = 8;
/// A zone may miss what it wants by this share before one row more is tried.
const MISS: f64 = 0.25;
/// Rows more than the even start that are tried.
const MORE: usize = 2;
/// Moves tried, mm, the wide ones first.
const STEPS: [f64; 6] = [48.0, 24.0, 12.0, 6.0, 3.0, 1.0];
/// Rounds of moves; most settle in five.
const ROUNDS: usize = 24;
/// How much a wrong total weighs against a wrong zone.
const TOTAL: f64 = 40.0;
/// How much uneven gaps and rows off the middle weigh: enough to decide between likes.
const UNEVEN: f64 = 0.5;
const ASKEW: f64 = 0.002;
/// How much rows weigh that take unlike shares of their gaps.
const UNLIKE: f64 = 0.03;

/// A stretch that one row may lie in.
#[derive(Clone, Debug)]
pub(super) struct Lane {
    /// How long it is, mm.
    pub(super) length: f64,
    /// How far up the head, as a share of all lanes laid end to end.
    pub(super) mark: f64,
    /// Its zones: where each begins and ends along it, mm.
    pub(super) zones: Vec<(Zone, f64, f64)>,
}

/// A row: its lane, and where it begins and ends along it, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lain {
    pub(super) lane: usize,
    pub(super) from: f64,
    pub(super) to: f64,
}

/// What is asked.
pub(super) struct Asked<'a> {
    /// Where rows may lie, in order up the head.
    pub(super) lanes: &'a [Lane],
    /// Wanted in each zone, mm.
    pub(super) wanted: [f64; 8],
    /// The shortest row worth sewing, mm.
    pub(super) shortest: f64,
    /// How far the whole may miss, as a share.
    pub(super) tolerance: f64,
}

struct Trial {
    rows: Vec<Lain>,
    cost: f64,
}

impl Asked<'_> {
    fn total(&self) -> f64 {
        self.wanted.iter().sum()
    }

    /// Lays so many rows, or up to two more where a zone would be left out; none where that many cannot be laid.
    pub(super) fn lay(&self, rows: usize) -> Option<Vec<Lain>> {
        let mut best: Option<(Trial, f64)> = None;
        for rows in rows..=(rows + MORE).min(MOST).min(self.lanes.len()) {
            let Some(trial) = self.trial(rows) else { continue };
            let miss = self.miss(&trial.rows);
            let better = best.as_ref().is_none_or(|(one, least)| trial.cost < one.cost && miss < *least - 0.05);
            if better {
                best = Some((trial, miss));
            }
            if best.as_ref().is_some_and(|(_, miss)| *miss <= MISS) {
                break;
            }
        }
        let (trial, _) = best?;
        let laid: f64 = trial.rows.iter().map(|row| row.to - row.from).sum();
        let off = libm::fabs(laid - self.total());
        (off <= self.total() * self.tolerance).then_some(trial.rows)
    }

    fn least(&self, lane: usize) -> f64 {
        self.shortest.min(self.lanes[lane].length)
    }

    fn by_zone(&self, rows: &[Lain]) -> [f64; 8] {
        let mut placed = [0.0; 8];
        for row in rows {
            for (zone, from, to) in &self.lanes[row.lane].zones {
                placed[*zone as usize] += (to.min(row.to) - from.max(row.from)).max(0.0);
            }
        }
        placed
    }

    /// The worst miss of a zone as a share of what it wants.
    fn miss(&self, rows: &[Lain]) -> f64 {
        let placed = self.by_zone(rows);
        let misses = self.wanted.iter().zip(placed).filter(|(wanted, _)| **wanted > 0.0);
        misses.map(|(wanted, placed)| libm::fabs(placed - wanted) / wanted).fold(0.0, f64::max)
    }

    fn cost(&self, rows: &[Lain]) -> f64 {
        let placed = self.by_zone(rows);
        let total = self.total();
        let mut cost = 0.0;
        for (wanted, placed) in self.wanted.iter().zip(placed) {
            if *wanted > 0.0 {
                cost += (placed - wanted) * (placed - wanted) / wanted;
            }
        }
        let off = placed.iter().sum::<f64>() - total;
        cost += TOTAL * off * off / total;
        for row in rows {
            let below = rows.iter().filter(|one| one.lane < row.lane).count();
            let off = self.lanes[row.lane].mark - (below as f64 + 0.5) / rows.len() as f64;
            cost += UNEVEN * total * off * off / rows.len() as f64;
        }
        let share = |row: &Lain| (row.to - row.from) / self.lanes[row.lane].length;
        let mean = rows.iter().map(share).sum::<f64>() / rows.len() as f64;
        for row in rows {
            let lane = self.lanes[row.lane].length;
            cost += UNLIKE * total * (share(row) - mean) * (share(row) - mean) / rows.len() as f64;
            cost += ASKEW * total * libm::fabs(row.from + row.to - lane) / lane / rows.len() as f64;
        }
        cost
    }

    /// An even start, then small moves as long as they help.
    fn trial(&self, count: usize) -> Option<Trial> {
        let mut rows = self.start(count)?;
        let mut cost = self.cost(&rows);
        for _ in 0..ROUNDS {
            let before = cost;
            for at in 0..count {
                self.other_lane(&mut rows, &mut cost, at);
                for step in STEPS {
                    self.edges(&mut rows, &mut cost, at, step);
                    for other in 0..count {
                        if other != at {
                            self.give(&mut rows, &mut cost, at, other, step);
                        }
                    }
                }
            }
            if cost > before * (1.0 - 1e-6) {
                break;
            }
        }
        Some(Trial { rows, cost })
    }

    fn start(&self, count: usize) -> Option<Vec<Lain>> {
        if count == 0 || count > self.lanes.len() {
            return None;
        }
        let total = self.total();
        let mut rows = Vec::with_capacity(count);
        for number in 0..count {
            let mark = (number as f64 + 0.5) / count as f64;
            let free = (0..self.lanes.len()).filter(|lane| rows.iter().all(|row: &Lain| row.lane != *lane));
            let off = |lane: &usize| libm::fabs(self.lanes[*lane].mark - mark);
            let lane = free.min_by(|a, b| off(a).total_cmp(&off(b)).then(a.cmp(b)))?;
            let whole = self.lanes.get(lane)?.length;
            let length = (total / count as f64).max(self.least(lane)).min(whole);
            rows.push(Lain { lane, from: (whole - length) / 2.0, to: (whole + length) / 2.0 });
        }
        let least: f64 = rows.iter().map(|row| self.least(row.lane)).sum();
        (least <= total * (1.0 + self.tolerance)).then_some(rows)
    }

    /// Puts rows in place of those at some places, where they may lie so and it costs less.
    fn try_rows(&self, rows: &mut Vec<Lain>, cost: &mut f64, changes: &[(usize, Lain)]) {
        for (_, row) in changes {
            let lane = self.lanes[row.lane].length;
            let sound = row.from >= 0.0 && row.to <= lane && row.to - row.from >= self.least(row.lane) - 1e-9;
            if !sound {
                return;
            }
        }
        let before = rows.clone();
        for (at, row) in changes {
            rows[*at] = *row;
        }
        let now = self.cost(rows);
        if now < *cost - 1e-9 {
            *cost = now;
        } else {
            *rows = before;
        }
    }

    fn other_lane(&self, rows: &mut Vec<Lain>, cost: &mut f64, at: usize) {
        for lane in 0..self.lanes.len() {
            if rows.iter().enumerate().any(|(other, row)| other != at && row.lane == lane) {
                continue;
            }
            let whole = self.lanes[lane].length;
            let had = (rows[at].to - rows[at].from).max(self.least(lane)).min(whole);
            let mut starts = vec![(whole - had) / 2.0, 0.0, whole - had];
            for (zone, from, to) in &self.lanes[lane].zones {
                // So that an end covers just what its zone wants.
                let wanted = self.wanted[*zone as usize];
                starts.extend([(to - wanted).max(*from), (from + wanted).min(*to) - had]);
            }
            for from in starts {
                self.try_rows(rows, cost, &[(at, Lain { lane, from, to: from + had })]);
            }
            let half = whole / 2.0;
            for (from, to) in [(0.0, whole), (0.0, half), (half, whole)] {
                self.try_rows(rows, cost, &[(at, Lain { lane, from, to })]);
            }
        }
    }

    fn edges(&self, rows: &mut Vec<Lain>, cost: &mut f64, at: usize, step: f64) {
        for (from, to) in [
            (-step, step),
            (step, -step),
            (-step, -step),
            (step, step),
            (-step, 0.0),
            (step, 0.0),
            (0.0, step),
            (0.0, -step),
        ] {
            let row = rows[at];
            let whole = self.lanes[row.lane].length;
            let row = Lain { from: (row.from + from).max(0.0), to: (row.to + to).min(whole), ..row };
            self.try_rows(rows, cost, &[(at, row)]);
        }
    }

    /// One row gives another some of its length, at either end of each.
    fn give(&self, rows: &mut Vec<Lain>, cost: &mut f64, at: usize, other: usize, step: f64) {
        for (at_from, other_from) in [(true, true), (true, false), (false, true), (false, false)] {
            let (mut one, mut two) = (rows[at], rows[other]);
            if at_from {
                one.from += step
            } else {
                one.to -= step
            }
            if other_from {
                two.from -= step
            } else {
                two.to += step
            }
            self.try_rows(rows, cost, &[(at, one), (other, two)]);
        }
    }
}
