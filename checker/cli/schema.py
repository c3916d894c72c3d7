"""``thrustline schema``: the formats, as JSON Schema."""

import click

from checker.cli.output import write
from checker.report import status


@click.command(short_help="Print the JSON Schema of a format.")
@click.argument("of", type=click.Choice(["spec", "report", "rulebook", "remarks"]), default="spec")
def command(of: str) -> int:
    """Print the JSON Schema of a spec, of the JSON report, of a house rulebook or of remarks."""
    import json

    if of == "spec":
        from checker.spec.model import schema as document
    elif of == "report":
        from checker.report.json_schema import report_schema as document
    elif of == "remarks":
        from checker.spec.remarks import remarks_schema as document
    else:
        from checker.review.rulebook_schema import house_schema as document
    write(json.dumps(document(), indent=2, ensure_ascii=False) + "\n")
    return status.CLEAR
