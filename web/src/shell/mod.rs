//! What holds the pages: the browser's side, routes, the frame, the way out after a crash.
//!
//! What it is: the start of the app. What it is not: any page.

pub mod app;
pub mod focus;
pub mod frame;
pub mod js;
pub mod route;
pub mod talk;

/// Starts the app; a panic ends on the crash screen, which needs nothing of this.
pub fn start() {
    // Yew puts its own hook over a plain one.
    yew::set_custom_panic_hook(Box::new(|info| js::crash(&info.to_string())));
    let Some(root) = root_element() else {
        js::crash("The page has no place for the app (#app).");
        return;
    };
    yew::Renderer::<app::App>::with_root(root).render();
}

fn root_element() -> Option<web_sys::Element> {
    let document = web_sys::window()?.document()?;
    let root = document.get_element_by_id("app")?;
    root.set_inner_html("");
    Some(root)
}
