"""Couplings that need iteration: a root is bracketed, and its residual stands in the derivation."""
