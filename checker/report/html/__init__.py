"""The pages: a review as one HTML file, and the rulebook as a handbook."""
