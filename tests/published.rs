//! What published documents print, against what is figured here.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "published/absolute_volumes_articles.rs"]
mod absolute_volumes_articles;
#[path = "published/army_carpentry_course.rs"]
mod army_carpentry_course;
#[path = "published/asks.rs"]
mod asks;
#[path = "published/bagged_mix_pages.rs"]
mod bagged_mix_pages;
#[path = "published/body_sizes_and_reach.rs"]
mod body_sizes_and_reach;
#[path = "published/coating_coverage_columns.rs"]
mod coating_coverage_columns;
#[path = "published/coating_film_bulletin.rs"]
mod coating_film_bulletin;
#[path = "published/coating_formulas.rs"]
mod coating_formulas;
#[path = "published/contractor_spread_pp504.rs"]
mod contractor_spread_pp504;
#[path = "published/contractors_paint_formulas.rs"]
mod contractors_paint_formulas;
#[path = "published/contractors_stud_formulas.rs"]
mod contractors_stud_formulas;
#[path = "published/cutting_stock.rs"]
mod cutting_stock;
#[path = "published/drain_fall.rs"]
mod drain_fall;
#[path = "published/drain_sizes.rs"]
mod drain_sizes;
#[path = "published/drawing_scale_tables.rs"]
mod drawing_scale_tables;
#[path = "published/epa_lead_renovation_rule.rs"]
mod epa_lead_renovation_rule;
#[path = "published/estimating_textbook.rs"]
mod estimating_textbook;
#[path = "published/framing_limits.rs"]
mod framing_limits;
#[path = "published/gillette_and_hill_1908.rs"]
mod gillette_and_hill_1908;
#[path = "published/grout_coverage_sheet.rs"]
mod grout_coverage_sheet;
#[path = "published/grout_diy_table.rs"]
mod grout_diy_table;
#[path = "published/grout_retailer_chart.rs"]
mod grout_retailer_chart;
#[path = "published/gypsum_association_226.rs"]
mod gypsum_association_226;
#[path = "published/gypsum_board.rs"]
mod gypsum_board;
#[path = "published/mortar_teaching_pages.rs"]
mod mortar_teaching_pages;
#[path = "published/navedtra_14043_rule_38.rs"]
mod navedtra_14043_rule_38;
#[path = "published/nist_handbook_44_tape_reading.rs"]
mod nist_handbook_44_tape_reading;
#[path = "published/nist_sp_811.rs"]
mod nist_sp_811;
#[path = "published/ordering_board_page.rs"]
mod ordering_board_page;
#[path = "published/pca_standard_p10.rs"]
mod pca_standard_p10;
#[path = "published/pipe_asks.rs"]
mod pipe_asks;
#[path = "published/pipe_cut_length.rs"]
mod pipe_cut_length;
#[path = "published/pipe_growth.rs"]
mod pipe_growth;
#[path = "published/pipe_joints.rs"]
mod pipe_joints;
#[path = "published/pipe_offsets.rs"]
mod pipe_offsets;
#[path = "published/setting_mortar_articles.rs"]
mod setting_mortar_articles;
#[path = "published/setting_mortar_maker.rs"]
mod setting_mortar_maker;
#[path = "published/sheet_boards.rs"]
mod sheet_boards;
#[path = "published/tile_counts.rs"]
mod tile_counts;
#[path = "published/tile_floors.rs"]
mod tile_floors;
#[path = "published/tile_rules.rs"]
mod tile_rules;
#[path = "published/traverse_and_network_texts.rs"]
mod traverse_and_network_texts;
#[path = "published/trim_pages.rs"]
mod trim_pages;
#[path = "published/wall_paint_guide.rs"]
mod wall_paint_guide;
#[path = "published/wet_film_answer.rs"]
mod wet_film_answer;
