"""What can be asked of a part, each value with unit and derivation. No limits here."""
