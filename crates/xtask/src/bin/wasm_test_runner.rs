//! Runs wasm tests in the headless browser that `webdriver.json` describes; cargo calls it as its runner.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
