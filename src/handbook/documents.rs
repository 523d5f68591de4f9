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
    /// Fastening, framing and joints of gypsum board.
    GA_USING_GYPSUM_BOARD: "Using Gypsum Board for Walls and Ceilings", "section III", "Gypsum Association";
    /// Application and finishing, by the association.
    GA_216: "GA-216, Application and Finishing of Gypsum Panel Products", "", "Gypsum Association";
    /// Repair of fire-rated board.
    GA_225: "GA-225, Repair of Fire-Rated Gypsum Panel Product Systems", "", "Gypsum Association";
    /// Joint treatment in cold and damp weather.
    GA_236: "GA-236, Joint Treatment Under Extreme Weather Conditions", "", "Gypsum Association";
    /// The column on temperature while joints dry.
    GA_COLUMN: "Gypsum Association column, Walls & Ceilings", "article 83506", "Gypsum Association";
    /// The drying chart of finishers.
    DFC_DRYING: "Paper and chart on drying of joint compound", "as copied", "Drywall Finishing Council";
    /// The one- and two-family code.
    IRC: "International Residential Code", "2015 and later", "ICC";
    /// The Ontario code and the notes to it.
    ONTARIO_CODE: "Ontario Building Code O. Reg. 332/12 with CMHC notes", "as read", "Ontario, CMHC";
    /// Builder's course of the Navy.
    NAVEDTRA_14044: "NAVEDTRA 14044", "chapter 5", "US Navy";
    /// The residential inspection guide.
    RESIDENTIAL_GUIDE: "Residential inspection guide, gypsum board", "page 15", "mcvicker.com";
    /// The textbook on estimating.
    ESTIMATING: "Estimating in Building Construction", "p. 203", "";
    /// The maker's handbook that estimators quote.
    GYPSUM_HANDBOOK: "A maker's gypsum construction handbook (generic)", "", "";
    /// Finished sizes of softwood.
    PS_20: "PS 20, American Softwood Lumber Standard", "size table as copied", "NIST";
    /// Table of furring at board joints.
    BUILDING_HANDBOOK: "A building-construction handbook, gypsum board", "table 11.10 text", "";
    /// Popular guide to patching.
    HOW_TO_PATCH: "How to patch a hole in drywall", "article 216994-2", "This Old House";
    /// Popular guide to sizes of self-adhesive patches.
    PATCH_SIZES: "Patching and repairing holes", "as read", "drywalltips.org";
    /// Popular guide to backed patches.
    BACKED_PATCH: "How to cover a large hole; wall hole repair", "as read", "engineerfix.com, home-improvement4u.com";
    /// Work on or near live parts.
    NFPA_70E: "NFPA 70E practice with 29 CFR 1926.416", "", "NFPA, OSHA";
    /// Lead in homes built before 1978.
    EPA_RRP: "40 CFR 745.83 with EPA's answers on it", "2021", "EPA";
    /// The ban on asbestos in patching compounds.
    ASBESTOS_BAN: "42 FR 63354 and 16 CFR 1304", "15 Dec 1977", "CPSC";
    /// Dust from sanding compound.
    NIOSH_99_113: "NIOSH 99-113, Control of Drywall Sanding Dust", "1999", "NIOSH";
    /// Clues to a bearing wall.
    BEARING_CLUES: "How to tell a load-bearing wall", "as read", "engineerfix.com";
}
