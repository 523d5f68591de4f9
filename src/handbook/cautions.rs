//! What can hurt, said beside the result that it belongs to.
//!
//! A caution names the danger, says what to do, and leaves the ruling to the local code and to licensed people.

use super::Cite;

/// One or two sentences that stand beside a result.
#[derive(Debug, PartialEq)]
pub struct Caution {
    /// The danger, in one word or two.
    pub danger: &'static str,
    /// What can hurt and what to do.
    pub says: &'static str,
    /// Where that stands.
    pub cite: Cite,
}
