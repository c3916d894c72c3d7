"""The drawings to scale of one drive."""

from checker.measures.design import Design
from checker.report.pictures.front_view import front_view
from checker.report.pictures.picture import Picture


def drawings(design: Design) -> tuple[Picture, ...]:
    """Front view, each mesh close up, and side view."""
    return (front_view(design),)
