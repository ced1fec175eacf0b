//! The root: the model, the route, the page of the route.
//!
//! What it is: where everything begins. What it is not: anything a page does.

use gloo_events::EventListener;
use yew::prelude::*;

use super::{
    frame::frame,
    js,
    route::{Route, Tab},
    talk,
};
use crate::{
    pages,
    parts::cell::use_cell,
    store::{desk::Desk, model::Model},
};

/// The app.
#[component]
pub fn App() -> Html {
    let model = use_reducer(|| Model::start(talk::prefs()));
    let desk = Desk::new(model);
    let route = use_cell(Route::now);
    {
        let desk = desk.clone();
        use_effect_with((), move |()| desk.open());
    }
    {
        let route = route.clone();
        use_effect_with((), move |()| {
            let listener = web_sys::window()
                .map(|window| EventListener::new(&window, "hashchange", move |_| route.set(Route::now())));
            move || drop(listener)
        });
    }
    // The first page keeps the browser's own focus; every later one is announced by its heading.
    let first = use_mut_ref(|| true);
    let here = route.get();
    use_effect_with(here, move |_| {
        if !first.replace(false) {
            js::focus_id("page-title");
        }
    });
    let page = match here {
        Route::Wigs => pages::wigs::page(&desk),
        Route::Start => html! { <pages::start::Start /> },
        Route::Lots => pages::lots::page(&desk),
        Route::Fibres => pages::drawer::page(),
        Route::Fibre(name) => pages::drawer::fibre_page(&desk, name),
        Route::Find => html! { <pages::find::Find /> },
        Route::Open => html! { <pages::handover::open::Open /> },
        Route::Safe => html! { <pages::safe::Safe /> },
        Route::Units => pages::units::page(&desk),
        Route::About => pages::about::page(),
        Route::Missing => pages::about::missing(),
        Route::Wig(wig, tab) => match desk.model().whose(wig) {
            None => pages::about::missing(),
            Some(whose) => {
                let inner = match tab {
                    Tab::Cap => html! { <pages::cap::Cap {wig} {whose} /> },
                    Tab::Base => pages::base::page(&desk, wig, whose),
                    Tab::Look => html! { <pages::look::Look {wig} {whose} /> },
                    Tab::Weft => html! { <pages::weft::Weft {wig} {whose} /> },
                    Tab::Heat => html! { <pages::heat::Heat {wig} {whose} /> },
                    Tab::Colour => pages::colour::page(&desk, wig, whose),
                    Tab::Record => pages::bench::page(&desk, wig, whose),
                    Tab::Sheet => html! { <pages::paper::Paper {wig} {whose} /> },
                };
                pages::wig::frame(&desk, wig, whose, tab, inner)
            }
        },
    };
    // Another address is another page: no field keeps what was typed on the last one.
    let page = html! { <div key={here.href()}>{ page }</div> };
    html! {
        <ContextProvider<Desk> context={desk.clone()}>{ frame(&desk, here, page) }</ContextProvider<Desk>>
    }
}
