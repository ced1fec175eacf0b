//! Runs one wasm test binary in headless Chromium: cargo calls it for `cargo test --target wasm32-unknown-unknown`.
//!
//! What it is: wasm-bindgen's own runner, linked in so that its version always fits the library's.
//! What it is not: part of `cargo xtask` itself; it builds only when wasm tests are asked for.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
