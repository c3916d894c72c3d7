"""What a review shows: one module per output. Nothing is computed here."""
