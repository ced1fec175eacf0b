//! A value of a part that redraws it when it changes.
//!
//! What it is: a cell beside the one redraw handle Yew has: its own state hook costs 2 to 3 kB of page for each type.
//! What it is not: shared between parts (see `store`).

use std::{cell::RefCell, rc::Rc};

use yew::{UseForceUpdateHandle, hook, use_force_update, use_mut_ref};

/// A value and its redraw.
pub struct Cell<T> {
    value: Rc<RefCell<T>>,
    redraw: UseForceUpdateHandle,
}

impl<T> Clone for Cell<T> {
    fn clone(&self) -> Cell<T> {
        Cell { value: self.value.clone(), redraw: self.redraw.clone() }
    }
}

impl<T: Clone> Cell<T> {
    /// The value now.
    pub fn get(&self) -> T {
        self.value.borrow().clone()
    }

    /// Another value; the part is drawn again.
    pub fn set(&self, value: T) {
        self.value.replace(value);
        self.redraw.force_update();
    }
}

/// A value that lives as long as the part.
#[hook]
pub fn use_cell<T: 'static>(first: impl FnOnce() -> T) -> Cell<T> {
    Cell { value: use_mut_ref(first), redraw: use_force_update() }
}
