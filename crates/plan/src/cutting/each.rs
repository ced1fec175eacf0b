//! Lists made place by place.
//!
//! What it is: one body of code for each kind of entry, as the bytes that a browser must fetch count. What it is not: for the
//! innermost loops; the entry is made through a pointer.

/// A list of so many entries.
#[inline(never)]
pub fn each<T>(count: usize, make: &dyn Fn(usize) -> T) -> Vec<T> {
    let mut list = Vec::with_capacity(count);
    for at in 0..count {
        list.push(make(at));
    }
    list
}

/// Each number as often as its count says, in order.
#[inline(never)]
pub fn repeated(counts: &[u32]) -> Vec<usize> {
    let mut list = Vec::new();
    for (at, &count) in counts.iter().enumerate() {
        for _ in 0..count {
            list.push(at);
        }
    }
    list
}
