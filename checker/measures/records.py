"""Measures of the papers that go with the drive, and of accepted deviations."""

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import stated
from checker.spec.subject import Subject


@measure("records", "", "whether the designer is named")
def designer_named(design: Design, records: Subject) -> Value:
    """Whether it is stated who designed the drive."""
    return stated(records, "drawn_by")


@measure("records", "", "whether another person than the designer reviewed it", at="reviews")
def reviewed_by_another(design: Design, records: Subject) -> Value:
    """Whether one of the reviews bears another name than the designer's."""
    reviews = records.raw("reviews")
    if reviews is None:
        return Unknown((records.place("reviews"),))
    designer = records.given("drawn_by", "designer")
    if isinstance(designer, Unknown):
        return designer
    names = tuple(
        Known(review.by, "", "reviewed by", path=(*records.place("reviews"), index, "by"))
        for index, review in enumerate(reviews)
        if review.by is not None
    )
    another = any(name.value != designer.value for name in names)
    return Known(another, "", "reviewed by another", inputs=(designer, *names))


@measure("records", "1", "checks on the preflight list", at="preflight_checks")
def preflight_check_count(design: Design, records: Subject) -> Value:
    """Number of checks listed for before each flight."""
    checks = records.raw("preflight_checks")
    place = records.place("preflight_checks")
    return Unknown((place,)) if checks is None else Known(len(checks), "1", "n", path=place)


@measure("deviation", "", "how a deviation stands on the day of the review")
def standing(design: Design, deviation: Subject) -> Value:
    """The review puts the standing here: it depends on the findings and on its date."""
    return Unknown(because="a deviation stands or not by the findings and the date of a review")
