"""The small engine: rulebook, rule by part to finding, deviations, summary."""
