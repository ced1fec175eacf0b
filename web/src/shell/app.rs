//! The root: the model, the route, the page of the route.
//!
//! What it is: where everything begins. What it is not: anything a page does.

use gloo_events::EventListener;
use yew::prelude::*;

use super::{
    frame::Frame,
    js,
    route::{Route, Tab},
    talk,
};
use crate::{
    pages,
    store::{desk::Desk, model::Model},
};

/// The app.
#[component]
pub fn App() -> Html {
    let model = use_reducer(|| Model::start(talk::prefs()));
    let desk = Desk::new(model);
    let route = use_state(Route::now);
    {
        let desk = desk.clone();
        use_effect_with((), move |()| desk.open());
    }
    {
        let route = route.setter();
        use_effect_with((), move |()| {
            let listener = web_sys::window().map(|window| {
                EventListener::new(&window, "hashchange", move |_| route.set(Route::now()))
            });
            move || drop(listener)
        });
    }
    // The first page keeps the browser's own focus; every later one is announced by its heading.
    let first = use_mut_ref(|| true);
    use_effect_with(*route, move |_| {
        if !first.replace(false) {
            js::focus_id("page-title");
        }
    });
    let page = match *route {
        Route::Wigs => html! { <pages::wigs::Wigs /> },
        Route::Start => html! { <pages::start::Start /> },
        Route::Lots => html! { <pages::lots::Lots /> },
        Route::Safe => html! { <pages::safe::Safe /> },
        Route::Units => html! { <pages::units::Units /> },
        Route::About => html! { <pages::about::About /> },
        Route::Missing => html! { <pages::about::Missing /> },
        Route::Wig(wig, tab) => match desk.model().whose(wig) {
            None => html! { <pages::about::Missing /> },
            Some(whose) => {
                let inner = match tab {
                    Tab::Cap => html! { <pages::cap::Cap {wig} {whose} /> },
                    Tab::Base => html! { <pages::base::Base {wig} {whose} /> },
                    Tab::Look => html! { <pages::look::Look {wig} {whose} /> },
                    Tab::Weft => html! { <pages::weft::Weft {wig} {whose} /> },
                    Tab::Record => html! { <pages::record::Record {wig} {whose} /> },
                };
                html! { <pages::wig::WigPage {wig} {whose} {tab}>{ inner }</pages::wig::WigPage> }
            }
        },
    };
    html! {
        <ContextProvider<Desk> context={desk}>
            <Frame route={*route}>{ page }</Frame>
        </ContextProvider<Desk>>
    }
}
