"""Pictures of the HTML report: drawings to scale and charts, as SVG that stands in the page."""
