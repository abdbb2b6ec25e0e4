//! Dials and displays. To come.
