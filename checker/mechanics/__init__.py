"""Pure formulas on SI floats. Nothing here knows of specs, rules or reports."""
