//! The photos of a wig as texts that a file can carry.
//!
//! What it is: a hook that reads them once they are wanted. What it is not: where they are kept (see `static/photo.js`).

use std::rc::Rc;

use record::{field::Value, history::fold::State, id::PhotoId};
use yew::prelude::*;

use crate::{
    parts::cell::{Cell, use_cell},
    shell::js,
};

/// The photos at hand; none before they are wanted.
#[hook]
pub fn use_photos(state: &Rc<State>, wanted: bool) -> Cell<Vec<(PhotoId, String)>> {
    let photos = use_cell(Vec::new);
    let found = photos.clone();
    use_effect_with((state.clone(), wanted), move |(state, wanted)| {
        let ids: Vec<PhotoId> = state
            .works()
            .iter()
            .filter_map(|done| match done.work.get("photo") {
                Some(Value::Photo(id)) => Some(*id),
                _ => None,
            })
            .collect();
        if *wanted && !ids.is_empty() {
            wasm_bindgen_futures::spawn_local(async move {
                let mut all = Vec::new();
                for id in ids {
                    if let Ok(Some(data)) = js::photo_data(&id.to_string()).await {
                        all.push((id, data));
                    }
                }
                found.set(all);
            });
        }
    });
    photos
}
