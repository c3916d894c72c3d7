"""The drive as a graph: which shaft turns which, how fast, how loaded."""
