"""The drawings to scale of one drive."""

from checker.measures.design import Design
from checker.report.pictures.front_view import front_view
from checker.report.pictures.mesh_close_up import mesh_close_up
from checker.report.pictures.picture import Picture
from checker.report.pictures.side_view import side_view


def drawings(design: Design) -> tuple[Picture, ...]:
    """Front view, side view, and each mesh close up; named apart where there are ratio sets."""
    chosen = design.subjects.ratio_set
    sets = [*design.subjects.spec.ratio_sets]
    ending = f"-of-set-{sets.index(chosen) + 1}" if chosen is not None else ""
    meshes = (
        mesh_close_up(design, mesh, f"mesh-{index}{ending}")
        for index, mesh in enumerate(design.subjects.all("mesh"), 1)
    )
    front, side = front_view(design, f"front-view{ending}"), side_view(design, f"side-view{ending}")
    return (front, side, *meshes)
