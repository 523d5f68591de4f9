//! The bibliography: every document once.

use super::Document;

macro_rules! documents {
    ($($(#[$doc:meta])* $name:ident: $title:literal, $edition:literal, $publisher:literal;)*) => {
        $($(#[$doc])* pub static $name: Document = Document { title: $title, edition: $edition, publisher: $publisher };)*
        /// All of them, in the order they are listed here.
        pub static ALL: &[&Document] = &[$(&$name),*];
    };
}

documents! {
    /// Scales, graduations and how they are read.
    NIST_HB_44: "Handbook 44, Specifications and Tolerances", "section 5.52 and 10.3 as copied", "NIST";
    /// Exact unit definitions.
    NIST_SP_811: "Special Publication 811, Guide for the Use of the SI", "2008", "NIST";
}
