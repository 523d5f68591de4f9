//! Compiles the screens; nothing to do without them.

fn main() {
    #[cfg(feature = "gui")]
    {
        let mut config = slint_build::CompilerConfiguration::new().with_style("fluent".into());
        if std::env::var("PROFILE").as_deref() == Ok("debug") {
            config = config.with_debug_info(true);
        }
        slint_build::compile_with_config("ui/app.slint", config).expect("the screens compile");
    }
}
