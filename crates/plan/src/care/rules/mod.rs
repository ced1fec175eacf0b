//! The checks, a file a family.
//!
//! What it is: tables of rules with their functions. What it is not: how they are run (see `before`).

mod colour;
mod dye;
mod glue;
mod heat;
mod lots;
mod sequence;
mod set;
mod wear;

use super::bench::Check;

/// All families.
pub(super) const ALL: [&[Check]; 8] = [
    heat::CHECKS,
    set::CHECKS,
    dye::CHECKS,
    colour::CHECKS,
    glue::CHECKS,
    sequence::CHECKS,
    lots::CHECKS,
    wear::CHECKS,
];
