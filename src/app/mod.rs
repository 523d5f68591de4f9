//! What is open, what was asked, and every screen as plain data.
