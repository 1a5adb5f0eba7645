//! Plans and sums: which figures there are and how each is worked out.
