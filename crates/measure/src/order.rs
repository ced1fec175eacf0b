//! Sorting and sorted lists, at few bytes.
//!
//! What it is: the standard library's answers from one routine that is compiled once: its own sorts cost about 4 kB of page
//! for each type sorted. What it is not: faster than them; nothing that is sorted here is long.

use core::cmp::Ordering;

/// Sorts as `slice::sort` does; equal items keep their order.
pub fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, &T::cmp);
}

/// Sorts as `slice::sort_by` does; items that compare equal keep their order.
#[inline(never)]
pub fn sort_by<T>(items: &mut [T], compare: &dyn Fn(&T, &T) -> Ordering) {
    let swaps = swaps(items.len(), &|a, b| compare(&items[a], &items[b]) == Ordering::Greater);
    for (a, b) in swaps {
        items.swap(a as usize, b as usize);
    }
}

/// Sorts and keeps one of each.
pub fn sort_unique<T: Ord>(items: &mut Vec<T>) {
    sort(items);
    items.dedup();
}

/// Sorts numbers from low to high, as `f64::total_cmp` has it.
pub fn sort_numbers(items: &mut [f64]) {
    sort_by(items, &f64::total_cmp);
}

/// The number, or the nearer of two bounds it passes: `f64::clamp` without its panic, whose words bring in the whole of the
/// standard library's number formatting.
pub fn within(value: f64, low: f64, high: f64) -> f64 {
    if value < low {
        low
    } else if value > high {
        high
    } else {
        value
    }
}

/// Adds an item to a sorted list where it belongs; `false` where its like is there already.
pub fn add_new<T: Ord>(sorted: &mut Vec<T>, item: T) -> bool {
    match sorted.binary_search(&item) {
        Ok(_) => false,
        Err(place) => {
            sorted.insert(place, item);
            true
        }
    }
}

/// The swaps that bring so many items in order, one after another.
fn swaps(count: usize, after: &dyn Fn(usize, usize) -> bool) -> Vec<(u32, u32)> {
    let mut order = merged(count, after);
    let mut swaps = Vec::new();
    for first in 0..count {
        let mut place = first;
        loop {
            let from = order[place] as usize;
            order[place] = place as u32;
            if from == first {
                break;
            }
            swaps.push((place as u32, from as u32));
            place = from;
        }
    }
    swaps
}

/// Where the item of each place comes from: a merge sort from short runs to long ones.
fn merged(count: usize, after: &dyn Fn(usize, usize) -> bool) -> Vec<u32> {
    let mut order: Vec<u32> = (0..count as u32).collect();
    let mut next = order.clone();
    let mut run = 1;
    while run < count {
        for from in (0..count).step_by(2 * run) {
            let (middle, end) = ((from + run).min(count), (from + 2 * run).min(count));
            let (mut left, mut right) = (from, middle);
            for place in &mut next[from..end] {
                let take_right = left == middle || (right < end && after(order[left] as usize, order[right] as usize));
                let taken = if take_right { &mut right } else { &mut left };
                *place = order[*taken];
                *taken += 1;
            }
        }
        core::mem::swap(&mut order, &mut next);
        run *= 2;
    }
    order
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn sorts_as_the_standard_library_does(items in prop::collection::vec(0u8..40, 0..200)) {
            // The place beside each item shows that equal ones keep their order.
            let mut ours: Vec<(u8, usize)> = items.iter().copied().enumerate().map(|(at, item)| (item, at)).collect();
            let mut theirs = ours.clone();
            sort_by(&mut ours, &|a, b| b.0.cmp(&a.0));
            theirs.sort_by_key(|one| core::cmp::Reverse(one.0));
            prop_assert_eq!(&ours, &theirs);
            sort(&mut ours);
            theirs.sort();
            prop_assert_eq!(ours, theirs);
        }

        #[test]
        fn keeps_one_of_each(mut items in prop::collection::vec(0u8..40, 0..60)) {
            let mut list = Vec::new();
            let added = items.iter().filter(|item| add_new(&mut list, **item)).count();
            sort_unique(&mut items);
            prop_assert_eq!(added, items.len());
            prop_assert_eq!(list, items);
        }

        #[test]
        fn sorts_numbers(mut items in prop::collection::vec(any::<f64>(), 0..60)) {
            let mut theirs = items.clone();
            sort_numbers(&mut items);
            theirs.sort_by(f64::total_cmp);
            prop_assert!(items.iter().zip(&theirs).all(|(a, b)| a.to_bits() == b.to_bits()));
        }
    }
}
