//! The screens: they show what `app` says and send what was tapped. No arithmetic.

#[allow(
    missing_docs,
    unreachable_pub,
    unused_qualifications,
    clippy::all,
    clippy::pedantic,
    clippy::unwrap_used,
    clippy::panic
)]
pub(crate) mod generated {
    slint::include_modules!();
}
