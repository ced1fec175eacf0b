//! Handing over and taking back: what a helper is given, what comes back, what it adds to the record.
//!
//! What it is: the model of a sheet's data and of a return slip, and the comparison of a slip with the record.
//! What it is not: how either looks in a file or a link (see the `format` room), or the sheet on paper (see `sheet`).

pub mod handed;
pub mod numbers;
pub mod slip;
pub mod take;
