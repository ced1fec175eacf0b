//! The page's plain JavaScript, as the app calls it.
//!
//! What it is: declarations, and promises turned into results. What it is not: decisions.

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

#[wasm_bindgen]
extern "C" {
    /// Opens the browser's print dialogue.
    pub fn print();
}

#[wasm_bindgen(raw_module = "./crash.js")]
extern "C" {
    /// Ends the app on the crash screen.
    pub fn crash(message: &str);
}

#[wasm_bindgen(raw_module = "./shell.js")]
extern "C" {
    /// The minute on the wall: `2026-11-25T09:30`.
    pub fn now_local_minute() -> String;
    /// The second in UTC: `2026-11-25T09:31:02Z`.
    pub fn now_utc() -> String;
    /// 32 random hex digits.
    pub fn random_id() -> String;
    /// Moves the focus to an element.
    pub fn focus_id(id: &str) -> bool;
    /// Hands a text to the browser as a download.
    pub fn download(name: &str, mime: &str, text: &str);
    #[wasm_bindgen(js_name = persisted)]
    fn persisted_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = persist)]
    fn persist_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = offline_ready)]
    fn offline_ready_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = take_update)]
    fn take_update_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = watch_update)]
    fn watch_update_js(callback: &js_sys::Function) -> JsValue;
    #[wasm_bindgen(js_name = pick_text_file)]
    fn pick_text_file_js(accept: &str, max_bytes: f64) -> js_sys::Promise;
}

#[wasm_bindgen(raw_module = "./photo.js")]
extern "C" {
    #[wasm_bindgen(js_name = take_photo)]
    fn take_photo_js(keep: bool) -> js_sys::Promise;
    #[wasm_bindgen(js_name = put_photo)]
    fn put_photo_js(hash: &str, data: &str, keep: bool) -> js_sys::Promise;
    #[wasm_bindgen(js_name = photo_data)]
    fn photo_data_js(hash: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = photo_address)]
    fn photo_address_js(hash: &str, large: bool) -> js_sys::Promise;
}

#[wasm_bindgen(raw_module = "./swatch.js")]
extern "C" {
    #[wasm_bindgen(js_name = tap_photo)]
    fn tap_photo_js(host: &str, tapped: &js_sys::Function) -> js_sys::Promise;
}

#[wasm_bindgen(raw_module = "./store.js")]
extern "C" {
    #[wasm_bindgen(js_name = open)]
    fn open_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = add)]
    fn add_js(rows: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = take_in)]
    fn take_in_js(rows: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = take_in_people)]
    fn take_in_people_js(people: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = all)]
    fn all_js() -> js_sys::Promise;
    #[wasm_bindgen(js_name = backup_text)]
    fn backup_text_js(producer: &str, now: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = put_meta)]
    fn put_meta_js(name: &str, value: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = get_meta)]
    fn get_meta_js(name: &str) -> js_sys::Promise;
    #[wasm_bindgen(js_name = describe_error)]
    fn describe_error_js(cause: &JsValue) -> String;
    #[wasm_bindgen(js_name = subscribe)]
    fn subscribe_js(callback: &js_sys::Function) -> JsValue;
}

/// What went wrong in the browser, in its own words.
#[derive(Clone, Debug, PartialEq)]
pub struct JsError {
    /// `quota`, `blocked`, `newer`, `unreadable`, `aborted`, `closed`, `other`…
    pub kind: String,
    /// For people.
    pub message: String,
    /// For whoever mends it.
    pub detail: String,
}

async fn settled(promise: js_sys::Promise) -> Result<JsValue, JsError> {
    JsFuture::from(promise).await.map_err(|cause| error_of(&cause))
}

fn error_of(cause: &JsValue) -> JsError {
    let text = describe_error_js(cause);
    let read = |name: &str| {
        let parsed = js_sys::JSON::parse(&text).ok()?;
        js_sys::Reflect::get(&parsed, &JsValue::from_str(name)).ok()?.as_string()
    };
    JsError {
        kind: read("kind").unwrap_or_else(|| "other".to_owned()),
        message: read("message").unwrap_or_else(|| text.clone()),
        detail: read("detail").unwrap_or_default(),
    }
}

async fn text(promise: js_sys::Promise) -> Result<String, JsError> {
    Ok(settled(promise).await?.as_string().unwrap_or_default())
}

/// Opens the records; answers the store's JSON.
pub async fn open() -> Result<String, JsError> {
    text(open_js()).await
}

/// Adds rows; answers them as stored.
pub async fn add(rows: &str) -> Result<String, JsError> {
    text(add_js(rows)).await
}

/// Takes in rows from a file; answers counts.
pub async fn take_in(rows: &str) -> Result<String, JsError> {
    text(take_in_js(rows)).await
}

/// Takes in people from a file.
pub async fn take_in_people(people: &str) -> Result<String, JsError> {
    text(take_in_people_js(people)).await
}

/// Every row.
pub async fn all() -> Result<String, JsError> {
    text(all_js()).await
}

/// The whole backup.
pub async fn backup_text(producer: &str, now: &str) -> Result<String, JsError> {
    text(backup_text_js(producer, now)).await
}

/// Keeps a text under a name.
pub async fn put_meta(name: &str, value: &str) -> Result<(), JsError> {
    settled(put_meta_js(name, value)).await.map(|_| ())
}

/// The text kept under a name.
pub async fn get_meta(name: &str) -> Result<Option<String>, JsError> {
    Ok(settled(get_meta_js(name)).await?.as_string())
}

/// `yes`, `no` or `unknown`: whether the browser promised to keep the records.
pub async fn persisted() -> String {
    text(persisted_js()).await.unwrap_or_else(|_| "unknown".to_owned())
}

/// Asks for that promise.
pub async fn persist() -> String {
    text(persist_js()).await.unwrap_or_else(|_| "unknown".to_owned())
}

/// Whether the app opens without a network.
pub async fn offline_ready() -> bool {
    settled(offline_ready_js()).await.ok().and_then(|value| value.as_bool()).unwrap_or(false)
}

/// Takes the new version that waits; the page goes.
pub async fn take_update() -> Result<(), JsError> {
    settled(take_update_js()).await.map(|_| ())
}

/// Lets the person choose a text file; nothing when they choose none.
pub async fn pick_text_file(accept: &str, most: f64) -> Result<Option<(String, String)>, JsError> {
    let picked = settled(pick_text_file_js(accept, most)).await?;
    let read = |name: &str| js_sys::Reflect::get(&picked, &JsValue::from_str(name)).ok()?.as_string();
    Ok(if picked.is_null() { None } else { read("name").zip(read("text")) })
}

/// Lets the person take or choose a photo; its hash, or nothing when they choose none.
pub async fn take_photo(keep: bool) -> Result<Option<String>, JsError> {
    Ok(settled(take_photo_js(keep)).await?.as_string())
}

/// Keeps a photo that came with a file, in base64, under its hash.
pub async fn put_photo(hash: &str, data: &str, keep: bool) -> Result<(), JsError> {
    settled(put_photo_js(hash, data, keep)).await.map(|_| ())
}

/// A photo as a text that a file can carry; nothing where it is missing here.
pub async fn photo_data(hash: &str) -> Result<Option<String>, JsError> {
    Ok(settled(photo_data_js(hash)).await?.as_string())
}

/// An address to show a photo by; nothing where it is missing here.
pub async fn photo_address(hash: &str, large: bool) -> Result<Option<String>, JsError> {
    Ok(settled(photo_address_js(hash, large)).await?.as_string())
}

/// Draws a photo the person chooses into an element and hears of the colour under each touch; whether there is one.
pub async fn tap_photo(host: &str, tapped: impl Fn(u8, u8, u8) + 'static) -> bool {
    // It lives as long as the photo may be touched.
    let closure = Closure::<dyn Fn(u8, u8, u8)>::new(tapped);
    let there = settled(tap_photo_js(host, closure.as_ref().unchecked_ref())).await;
    closure.forget();
    there.ok().and_then(|there| there.as_bool()).unwrap_or(false)
}

/// Hears of new versions for as long as the app lives.
pub fn watch_update(callback: impl Fn(String) + 'static) {
    let closure = Closure::<dyn Fn(String)>::new(callback);
    watch_update_js(closure.as_ref().unchecked_ref());
    closure.forget();
}

/// Hears of other tabs' commits for as long as the app lives.
pub fn subscribe(callback: impl Fn(String) + 'static) {
    let closure = Closure::<dyn Fn(String)>::new(callback);
    subscribe_js(closure.as_ref().unchecked_ref());
    closure.forget();
}
