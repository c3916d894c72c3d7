"""A picture with the words that say the same."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture of a report.

    Attributes:
        name: unique in the report; ids inside the picture begin with it.
        title: what it shows, in a few words.
        describes: the same in words and figures, for those who do not see it.
        svg: an ``<svg>`` element to stand in the page: ``role="img"``, labelled by title and
            description, every text escaped, every colour a variable of ``palette``.
    """

    name: str
    title: str
    describes: str
    svg: str
