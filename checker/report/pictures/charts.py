"""The charts of a review, in the order in which they stand in its report."""

from checker.measures.design import Design
from checker.report.pictures.interference import interference_diagram
from checker.report.pictures.picture import Picture
from checker.review.review import Review


def charts(review: Review, design: Design) -> tuple[Picture, ...]:
    """Every chart of a design for which the spec states enough.

    Args:
        review: the review.
        design: its design with one ratio set.
    """
    made = (interference_diagram(design),)
    return tuple(each for each in made if each is not None)
