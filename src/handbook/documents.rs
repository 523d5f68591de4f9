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
    /// Old rules of measuring for paint.
    CYCLOPEDIA_OF_PAINTING: "Cyclopedia of Painting, Estimating", "1908, pp. 125-127", "Frederick J. Drake";
    /// Exact unit definitions.
    NIST_SP_811: "Special Publication 811, Guide for the Use of the SI", "2008", "NIST";
    /// Fastening, framing and joints of gypsum board.
    GA_USING_GYPSUM_BOARD: "Using Gypsum Board for Walls and Ceilings", "section III", "Gypsum Association";
    /// Application and finishing, by the association.
    GA_216: "GA-216, Application and Finishing of Gypsum Panel Products", "", "Gypsum Association";
    /// Board bent to a curve, dry.
    GA_226: "GA-226, Application of Gypsum Board to Form Curved Surfaces", "2008, table 1, as copied", "Gypsum Association";
    /// Setting of tile, general requirements.
    ANSI_A108_02: "ANSI A108.02, General Requirements for Tile", "2017, as quoted", "ANSI";
    /// Methods of tile installation.
    TCNA_HANDBOOK: "Handbook for Tile Installation", "2017 and 2018, as quoted", "tile council";
    /// Laying cement backer board.
    BACKER_BOARD_GUIDE: "Backer board installation guide", "2019, as read on a dealer's page", "a maker";
    /// Silica at work.
    OSHA_SILICA: "29 CFR 1926.1153, Respirable Crystalline Silica", "Table 1 with tips of 2017", "OSHA, CPWR";
    /// Repair of fire-rated board.
    GA_225: "GA-225, Repair of Fire-Rated Gypsum Panel Product Systems", "", "Gypsum Association";
    /// Joint treatment in cold and damp weather.
    GA_236: "GA-236, Joint Treatment Under Extreme Weather Conditions", "", "Gypsum Association";
    /// The column on temperature while joints dry.
    GA_COLUMN: "Gypsum Association column, Walls & Ceilings", "article 83506", "Gypsum Association";
    /// The column on joints and gaps.
    GA_JOINTS: "Gypsum Association column, Walls & Ceilings", "article 86896", "Gypsum Association";
    /// Application of gypsum board, the standard.
    ASTM_C840: "ASTM C840, Application and Finishing of Gypsum Board", "", "ASTM";
    /// Weights of board and plywood.
    BOARD_WEIGHTS: "Building materials weights guide", "as read", "a dealer in sound insulation";
    /// Cement board and what it weighs.
    CEMENT_BOARD_PAGE: "Cement board", "as read", "constructionmentor.net";
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
    /// Spread, solids and film thickness of coatings.
    FILM_COLUMN: "How far will it go? A column on coating coverage", "October 2003, December 2009", "Painting and coatings center";
    /// Wet and dry film, thinning, and a table of spreads.
    FILM_BULLETIN: "Coating bulletin: solids by volume and film thickness", "as copied", "Coatings industry";
    /// Spread and solids for painting contractors.
    CONTRACTOR_SPREAD: "Spread rates from solids by volume", "PP504", "Paint contractors' magazine";
    /// Spread and film thickness from solids.
    FILM_FORMULAS: "Coating formulas: theoretical coverage", "as copied", "Coatings industry";
    /// Wet film thickness from a spread, worked.
    WET_FILM_ANSWER: "Converting a spread rate to a film thickness", "thread 557", "Unit conversion forum";
    /// Spread by surface for a household.
    WALL_PAINT_GUIDE: "Popular guide to estimating wall paint", "as read", "How-to publisher";
    /// Formulas of a contractor, with a worked room.
    CONTRACTOR_FORMULAS: "Contractor's estimating formulas, paint page", "as read", "Home repair contractor";
    /// Studs in a wall, counted.
    CONTRACTOR_STUDS: "Contractor's estimating formulas, wall studs page", "as read", "Home repair contractor";
    /// Primer on new drywall.
    PAINTER_PRIMER: "Painter's page on priming new drywall", "as read", "House painter";
    /// Painting of Army buildings, spread table.
    TM_43_0139: "TM 43-0139, Painting Instructions for Army Materiel", "Table 3-2", "US Army";
    /// Roller covers.
    TB_43_0144: "TB 43-0144, Painting of Watercraft", "section 4-4", "US Army";
    /// Temperatures for painting.
    MIL_HDBK_1110: "MIL-HDBK-1110, Paints and Protective Coatings", "section 7.4.1, in UFC 3-190-06", "US Department of Defense";
    /// Nap by surface.
    NAP_PAGES: "Trade pages on roller covers", "as read", "Paint trade";
    /// Poles by ceiling height.
    POLE_PAGE: "Extension poles for painting", "as read", "Painting contractor";
    /// Drying and recoating.
    DRYING_PAGES: "How-to articles on paint drying", "as read", "How-to publishers";
    /// Stature and reach.
    BODY_SIZES: "Tables of body sizes, after Pheasant", "chapter 2-1 and 2-25", "City University of Hong Kong";
    /// Body segments as shares of stature.
    BODY_SEGMENTS: "Body Segment Parameters", "1966", "Drillis and Contini";
    /// Measuring rule for narrow objects.
    PCA_P10: "Standard P10, measuring for painting, summary", "as read", "Painting Contractors Association";
    /// Levels of gypsum board finish.
    GA_214: "GA-214, Levels of Finish for Gypsum Panel Products", "as excerpted", "Gypsum Association";
    /// Lead paint in renovation.
    EPA_LEAD: "Lead renovation rule, 40 CFR 745.83, with answered questions", "2021", "US EPA";
    /// Who the lead rule binds.
    CFR_745_82: "40 CFR 745.82, Applicability", "", "US EPA";
    /// Advice on sprayed texture.
    EPA_ASBESTOS: "Asbestos in the home", "", "US EPA and CPSC";
    /// The ban of asbestos in patching compounds.
    CFR_1304: "16 CFR 1304 and 42 FR 63354", "15 December 1977", "US CPSC";
    /// Labels of hazardous products.
    OSHA_1200: "29 CFR 1910.1200, Hazard Communication", "", "US OSHA";
    /// Ladders.
    OSHA_1053: "29 CFR 1926.1053, Ladders", "", "US OSHA";
    /// Squareness by diagonals.
    ARMY_CARPENTRY: "Army engineer carpentry course", "figures 1-36 and 1-39", "US Army Engineer School";
    /// Larger triangles for squareness.
    FRAMING_TEXT: "Framing text, checking for square", "as read", "Building textbook";
    /// Architectural scales.
    SCALE_TABLE: "Table of drawing scales", "as read", "Drafting pages";
    /// The narrowest joint, quoting ANSI A108.02 section 4.3.8.
    LEAST_JOINT_PAGE: "What is the minimum grout joint, quoting ANSI A108.02", "and issue of February 2019", "TileLetter";
    /// Grout questions answered by the tile council.
    GROUT_QUESTIONS: "Frequently asked questions: grout", "as read", "TCNA";
    /// A household page on grout.
    GROUT_PAGE: "Home-improvement page on grout", "28 Nov 2001", "How-to publisher";
    /// Grout mixed on the job, from a stone manual.
    JOB_MIXED_GROUT: "A stone manual, section 3.2.2, in TileLetter", "May 2018, p. 84", "TileLetter";
    /// Depth of joint left open for grout.
    MMSA_16: "Bulletin 16", "2009", "Materials and Methods Standards Association";
    /// Wait between setting and grouting.
    MMSA_5: "Bulletin 5", "2005", "Materials and Methods Standards Association";
    /// What a bag of grout covers.
    GROUT_SHEET: "A maker's grout data sheet (generic)", "coverage table", "";
    /// A chart of grout by the square foot.
    GROUT_CHART: "A retailer's weblog, grout chart (generic)", "February 2010", "";
    /// A table of grout with a slipped decimal point.
    GROUT_DIY_TABLE: "How much grout for a square metre", "as read", "hausjournal.net";
    /// What stands on bags of grout.
    GROUT_BAGS: "Bags of cement grout (generic)", "", "";
    /// Joints at changes of plane.
    PLANE_CHANGE: "Reply on changes of plane, business articles", "as read", "TileLetter, NTCA";
    /// Sealants that are unsuitable.
    SEALANT_ARTICLE: "Article 111313 on sealants in tilework", "as read", "Floor Trends";
    /// Depth of sealant in a movement joint.
    MOVEMENT_TEXT: "Building-construction text, tile installation methods", "page 3", "civilengineeringx.com";
    /// Contact of mortar and tile, quoting ANSI A108.5.
    CONTACT_PAGE: "Insufficient mortar, quoting ANSI A108.5 section 3.3.2", "as read", "Ceramic Tile Education Foundation";
    /// Voids and stone, quoting the tile council.
    CONTACT_ANSWER: "Expert answer on 95 % contact, quoting TCNA", "as read", "ctasc.com";
    /// How thick a bed is after embedding.
    BED_TIP: "Article 111379, tip on ANSI A108 and TCNA", "as read", "Floor Trends";
    /// How the trowel is led.
    NTCA_MANUAL: "Reference Manual", "2024/25, section 8 and p. 199", "NTCA";
    /// Trowels by tile.
    TROWEL_PAGE: "How-to article on trowel sizes (low authority)", "as read", "ehow.co.uk";
    /// What a bag of setting mortar covers.
    BAG_TABLE: "How-to articles on mortar quantity (low authority)", "as read", "engineerfix.com";
    /// Water for setting mortar.
    MORTAR_WATER: "How-to page on water for setting mortar (low authority)", "as read", "How-to publisher";
    /// Water and density of a metric setting mortar.
    MORTAR_MAKER: "A maker's article on a C1T mortar (generic)", "as read", "";
    /// Mixing of setting mortar.
    MIXING_PAGES: "How-to articles on mixing mortar (low authority)", "as read", "How-to publishers";
    /// What stands on bags of mortar.
    MORTAR_BAGS: "Bags of setting mortar (generic)", "", "";
    /// Mortar under backer board.
    BACKER_GUIDE: "Installation guide to backer board (generic)", "April 2019", "Dealer's page";
    /// Slope of a shower floor.
    SHOWER_SLOPE: "International Residential Code, P2709.1, as reprinted", "2009 and 2021", "thebuildingcodeforum.com, weblog";
    /// Mortar beds of the Navy's builder.
    NAVEDTRA_14044_TILE: "NAVEDTRA 14044", "tile setting, as copied at pp. 230 to 232", "US Navy";
    /// Bulk of mortar.
    NAVEDTRA_14043: "NAVEDTRA 14043", "chapter 8", "US Navy";
    /// Dry volume of wet mortar.
    DRY_FACTOR_PAGES: "Teaching pages on mortar quantities", "as read", "wecivilengineers.blog and others";
    /// Measured yields of mortar.
    CONCRETE_1908: "Concrete Construction, Methods and Cost", "1908, pp. 21-22", "Gillette and Hill";
    /// How damp sand swells.
    SAND_NOTE: "Masonry technical note T-15 (generic)", "as read", "";
    /// Absolute volumes.
    VOLUMES_ARTICLE: "Volume of grout; volumetric batching", "as read", "concreteconstruction.net, concretedecor.net";
    /// Mortar for masonry.
    C270: "ASTM C270, Mortar for Unit Masonry", "", "ASTM";
    /// Masonry mortars of the Army.
    EN5157: "EN5157", "lesson 1", "US Army Engineer School";
    /// Beds for tile.
    A108_1A: "ANSI A108.1A", "", "ANSI";
    /// What bagged concrete makes.
    BAG_YIELDS: "General pages on bagged concrete (low authority)", "as read", "reference.com and others";
    /// Cement on the skin.
    OSHA_CEMENT: "Guidance on Portland cement, and contractors' page 1142", "as archived", "US OSHA, CPWR";
    /// Dust of stone and cement board.
    OSHA_1153: "29 CFR 1926.1153, Respirable Crystalline Silica, as quoted", "as read", "US OSHA";
    /// Lifting by hand.
    NIOSH_LIFTING: "NIOSH lifting equation, in OSHA's poultry eTool", "as read", "US OSHA, NIOSH";
    /// Old floor tile.
    NAVEDTRA_14045: "NAVEDTRA 14045", "p. 201 as copied", "US Navy";
    /// Studs bored and notched.
    IRC_R602_6: "International Residential Code, R602.6", "as quoted on teaching pages and in a state rule", "hinarratives.com, WAC 296-150C-1000";
    /// Joists bored and notched.
    IRC_R502_8: "International Residential Code, R502.8.1", "as quoted in a magazine and a lumber association's sheet", "jlconline.com, WWPA";
    /// Plates over pipe in framing.
    SHIELD_PLATES: "Shield plates over pipe, model codes and a city's", "quotes of 2009 and later, as read", "carnationconstruction, amlegal.com and others";
    /// Thickness of those plates.
    PLATE_THICKNESS: "Discussion of code on shield plates", "threads 196855 and 34477", "thebuildingcodeforum.com";
    /// Fall of drains by the residential code.
    IRC_P3005_3: "International Residential Code, P3005.3", "as quoted", "NACHI forum 7145, inspectionnews 11664";
    /// Fall of drains by the plumbing code.
    IPC_704_1: "International Plumbing Code, table 704.1", "the same table in a city's code, 18-29-704.1", "codelibrary.amlegal.com";
    /// Fall of drains by the uniform code.
    UPC_708: "Uniform Plumbing Code, section 708", "as quoted in a discussion", "thebuildingcodeforum.com";
    /// Length of trap arms by the residential and the plumbing code.
    VENT_DISTANCE: "Locating plumbing vents", "as read; IRC P3105.1 and IPC 909.1", "jlconline.com";
    /// Length of trap arms by the uniform code.
    UPC_1002_2: "Uniform Plumbing Code, table 1002.2", "as copied on how-to pages", "engineerfix.com, greenyplace";
    /// Fall of a trap arm.
    IRC_P3105_2: "International Residential Code, P3105.2", "as quoted, thread 1770", "thebuildingcodeforum.com";
    /// An arm of 3 in at 1/8 in/ft.
    ARM_QUESTION: "Question on a long 3 in trap arm", "thread 93231", "terrylove.com";
    /// Fixture units and what a drain carries by the uniform code.
    UPC_702_703: "Drainage fixture units, from UPC tables 702.1 and 703.2", "as read", "King County public health";
    /// Fixture units by the residential code.
    IRC_P3004_1: "International Residential Code, P3004.1", "as quoted", "secondary pages";
    /// What a branch carries by the residential code.
    IRC_P3005_4: "International Residential Code, table P3005.4.1", "", "ICC";
    /// Traps, cleanouts and showers.
    CODE_CHECK: "Code Check, plumbing", "pages 13 to 16", "codecheck.com";
    /// Clearances about fixtures.
    IRC_R305: "International Residential Code, R305 to R307", "2012, as quoted", "learnframing, masterplumbers 16626";
    /// Heights of fixtures as they are commonly roughed in.
    ROUGH_IN_TABLE: "Rough-in plumbing dimensions", "as read", "thespruce.com";
    /// Closet flanges.
    FLANGE_PAGES: "Answers on closet flanges and rough-in", "as read", "homerepairforum 9788, engineerfix.com, daveosborne.com";
    /// A drain's fall, worked, and its rough-in.
    MODERN_PLUMBING: "Modern Plumbing", "2022, p. 325; 2015, screen 319", "Goodheart-Willcox";
    /// Sizes of plastic pipe.
    HI_PIPE_TABLES: "Engineering Data Book, section IV, plastic pipe", "data file of 2025", "Hydraulic Institute";
    /// What a saw takes.
    KERF_ARTICLE: "What is a saw's kerf, and why it matters", "as read", "slashgear.com";
    /// What may go wrong with an open drain.
    SEWER_GAS: "Sewer gas", "as read", "a public sanitary district, kishwrd.com";
    /// Dimensions of tube and pipe.
    PIPE_DATA: "Engineering Data Book, section IV, tables of copper tube and plastic pipe", "data of October 2025", "Hydraulic Institute";
    /// A second and a third table of the same tube.
    TUBE_TABLES: "Tables of copper tube after ASTM B88", "as read", "sizes.com, engineeringtoolbox.com";
    /// Copper tube soldered: how deep the cups are and how much solder a joint takes.
    COPPER_HANDBOOK: "Copper Tube Handbook", "table 14.10", "Copper Development Association";
    /// The steps of soldering.
    COPPER_STEPS: "Copper Tube Handbook", "2014/20, chapter 7, p. 35", "Copper Development Association";
    /// Wrought copper fittings.
    B16_22: "ASME B16.22, Wrought Copper Solder-Joint Pressure Fittings", "2018 and 2021, as excerpted", "ASME";
    /// A textbook of plumbing.
    PLUMBING_2010: "Modern Plumbing, a textbook", "2010, p. 364, figures 20-20 and 20-21", "Goodheart-Willcox";
    /// The same, later.
    PLUMBING_2022: "Modern Plumbing, a textbook", "2015 and 2022, pp. 325 to 330", "Goodheart-Willcox";
    /// Cut length by fitting dimensions.
    ARMY_PLUMBING: "Army engineer plumbing course", "lessons on water and on waste pipe", "US Army Engineer School";
    /// Offsets and their multipliers.
    PLUMBING_1918: "Elements of Plumbing, chapter on measurements", "1918", "S. Dibble";
    /// Pipe wrapped and cut at an angle.
    STEELWORKER: "NAVEDTRA 14251, Steelworker", "chapter 3, figures 3-46 to 3-48", "US Navy";
    /// Sockets, cure and cement of plastic pipe.
    PLASTICS_MANUAL: "A maker's plastics technical manual (generic)", "pp. 15, 18 and 96", "";
    /// A second maker of cement.
    CEMENT_PAGE: "A cement maker's page on application (generic)", "as read", "";
    /// Drain fittings of plastic.
    D3311: "ASTM D3311, Drain, Waste and Vent Plastic Fittings Patterns", "2009 and 2011, first page", "ASTM";
    /// Drain pipe of PVC and its sockets.
    D2665: "ASTM D2665, PVC Drain, Waste and Vent Pipe and Fittings", "", "ASTM";
    /// CPVC of copper tube size.
    D2846: "ASTM D2846, CPVC Hot and Cold Water Systems", "", "ASTM";
    /// PEX sizes.
    F876: "ASTM F876, sizes as a county record reproduces them", "p. 29", "San Joaquin County";
    /// Taper pipe threads.
    B1_20_1: "ASME B1.20.1, taper pipe threads, as a distributor's page reproduces them", "as read", "ASME";
    /// How far threads may be off.
    THREAD_PAGE: "Support page on taper pipe threads", "as read", "Thread trade";
    /// Hangers of pipe.
    IRC_P2605: "International Residential Code, table P2605.1", "2018", "ICC";
    /// Tests of drains and supplies.
    IRC_P2503: "International Residential Code, P2503", "2018 in scan; New York 2007", "ICC";
    /// A city's rule on testing supplies.
    SUPPLY_TEST: "Water distribution rules", "as read", "City of Detroit";
    /// Expansion of copper.
    COPPER_GROWTH: "Copper Tube Handbook, expansion, as quoted", "70 to 212 °F", "Copper Development Association";
    /// Expansion of plastic pipe.
    PLASTIC_GROWTH: "Makers' guides to plastic pipe, expansion (generic)", "as read", "";
    /// Expansion of PEX.
    PEX_MANUAL: "Installation manuals for PEX (generic)", "as read", "";
    /// Lead in what carries water to drink.
    EPA_LEAD_FREE: "Safe Drinking Water Act, section 1417, page on lead-free plumbing", "as of 19 January 2017", "US EPA";
    /// Hot work.
    NFPA_51B: "NFPA 51B, Fire Prevention During Welding, Cutting and Other Hot Work", "2019, as two pages quote it", "NFPA";
    /// Solvent cement handled safely.
    F402: "ASTM F402, Safe Handling of Solvent Cements, Primers and Cleaners", "2005, abstract and section 4", "ASTM";
    /// Hot water and skin.
    SCALDS: "Tap water scalds, a safety text mirrored", "as read", "US CPSC";
    /// The limit stop of a shower valve.
    P2708: "International Residential Code, P2708, as two pages comment on it", "as read", "ICC";
    /// Base run round a room.
    RUNNING_BASE: "Running Baseboard, training the trades", "as read in an excerpt", "jlconline.com";
    /// Which point of a mitre lies where.
    TRIM_LESSONS: "Installing Baseboard, a trim course for apprentices", "2014, as read in an excerpt", "thisiscarpentry.com";
    /// Cuts of base.
    BASE_AND_DOORSTOPS: "Install baseboards and doorstops, a project page", "as read in an excerpt", "projects.truevalue.com";
    /// Casing, reveals, nails and caulk.
    CASING_PAGE: "Running casing and installing baseboard, from a house-building book", "as copied", "boulderlibrary.net";
    /// How deep a trim nail goes.
    BASE_FITS: "Perfect fits for baseboards", "as read in an excerpt", "joneakes.com";
    /// Woodworking machines.
    OSHA_WOODWORKING: "Woodworking: addressing the safety and health hazards", "as copied", "OSHA training leaflet";
    /// Nail guns.
    NAIL_GUN_SAFETY: "Nail Gun Safety, A Guide for Construction Contractors", "2011, as summed up by NIOSH and a safety council", "NIOSH, OSHA";
}
