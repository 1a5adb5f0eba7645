//! Advice as documents of blocks, in words, drawings and tables.
