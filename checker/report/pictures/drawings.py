"""The drawings to scale of one drive."""

from checker.measures.design import Design
from checker.report.pictures.front_view import front_view
from checker.report.pictures.mesh_close_up import mesh_close_up
from checker.report.pictures.picture import Picture
from checker.report.pictures.side_view import side_view


def drawings(design: Design) -> tuple[Picture, ...]:
    """Front view, side view, and each mesh close up."""
    meshes = (
        mesh_close_up(design, mesh, f"mesh-{index}")
        for index, mesh in enumerate(design.subjects.all("mesh"), 1)
    )
    return (front_view(design), side_view(design), *meshes)
