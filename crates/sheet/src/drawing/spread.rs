//! Labels beside a picture, moved apart so that none covers another.
//!
//! What it is: the nearest places in one direction with a least distance. What it is not: a choice of labels.

/// Moves sorted `wanted` places apart to at least `gaps[i]` between place `i` and the next, as little as possible in the
/// least-squares sense (pooling of neighbours that violate the order).
pub(crate) fn spread(wanted: &[f64], gaps: &[f64]) -> Vec<f64> {
    // Less the room the earlier ones take, the places must only not fall.
    let mut offsets = Vec::with_capacity(wanted.len());
    let mut run = 0.0;
    for index in 0..wanted.len() {
        offsets.push(run);
        run += gaps.get(index).copied().unwrap_or(0.0);
    }
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (place, offset) in wanted.iter().zip(&offsets) {
        let mut pool = (place - offset, 1);
        while let Some((mean, count)) = pools.last().copied()
            && mean > pool.0
        {
            pools.pop();
            let both = count + pool.1;
            pool = ((mean * count as f64 + pool.0 * pool.1 as f64) / both as f64, both);
        }
        pools.push(pool);
    }
    let mut at = 0;
    for (mean, count) in pools {
        for offset in &mut offsets[at..at + count] {
            *offset += mean;
        }
        at += count;
    }
    offsets
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn far_places_stay_and_near_ones_part_evenly() {
        assert_eq!(spread(&[0.0, 50.0], &[8.0, 8.0]), [0.0, 50.0]);
        assert_eq!(spread(&[10.0, 10.0], &[8.0, 8.0]), [6.0, 14.0]);
        assert_eq!(spread(&[], &[]), [0.0; 0]);
        let places = spread(&[0.0, 1.0, 2.0, 3.0, 100.0], &[8.0; 5]);
        assert!(places.windows(2).all(|pair| pair[1] - pair[0] >= 8.0 - 1e-9), "{places:?}");
        assert_eq!(places[4], 100.0);
    }
}
