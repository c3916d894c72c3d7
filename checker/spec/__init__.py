"""What a person writes: quantities with units, YAML with places, and the models of the spec."""
