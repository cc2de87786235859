"""Addresses of the pages."""

from django.urls import path

from stemward.web import bring
from stemward.web.views import day, first, give, land, opening, plan, server, shelf, sums, trace

handler404 = "stemward.web.views.trouble.not_found"

T = "land/<str:tract_id>/"

urlpatterns = [
    path("", opening.opening, name="opening"),
    path("enter/<str:word>", server.enter, name="enter"),
    path("alive", server.alive, name="alive"),
    path("again", server.again, name="again"),
    path("icon", server.icon, name="icon"),
    path("quit", server.leave, name="leave"),
    path("settings", opening.settings, name="settings"),
    path("example", opening.example, name="example"),
    path("bring", opening.bring, name="bring"),
    path("copies", give.copies, name="copies"),
    path("copies/now", give.copy_now, name="copy-now"),
    path("sums", sums.sums, name="sums"),
    path("sums/<str:which>", sums.one, name="sum"),
    path("first", first.start, name="first"),
    path(T + "first/<int:number>", first.screen, name="first-screen"),
    path(T, land.overview, name="land"),
    path(T + "step", land.step, name="step"),
    path(T + "undo", trace.undo_view, name="undo"),
    path(T + "redo", trace.redo_view, name="redo"),
    path(T + "changes", trace.changes, name="changes"),
    path(T + "remove", land.remove, name="remove"),
    path(T + "about", land.about, name="about"),
    path(T + "plan.json", land.drawing, name="land-json"),
    path(T + "draw", land.draw, name="draw"),
    path(T + "patch", land.add_patch, name="add-patch"),
    path(T + "patch/<str:patch>", land.patch, name="patch"),
    path(T + "patch/<str:patch>/count", land.count, name="count"),
    path(T + "patch/<str:patch>/kept", land.kept, name="kept"),
    path(T + "patch/<str:patch>/plots", land.plots, name="plots"),
    path(T + "patch/<str:patch>/plots/<str:what>", land.plot_file, name="plot-file"),
    path(T + "piece/<str:kind>", land.piece, name="add-piece"),
    path(T + "piece/<str:kind>/<path:key>", land.piece, name="piece"),
    path(T + "stems", land.stems, name="stems"),
    path(T + "stems/rows", land.stem_rows, name="stem-rows"),
    path(T + "stems/edit", land.stem_edit, name="stem-edit"),
    path(T + "import", bring.bring_page, name="import"),
    path(T + "import/far", bring.bring_progress, name="import-far"),
    path(T + "ways", plan.overview, name="plan"),
    path(T + "ways/<str:patch>/<str:species>/<str:state>", plan.ways, name="ways"),
    path(T + "ways/<str:patch>/<str:species>/<str:state>/if", plan.what_if, name="what-if"),
    path(T + "ways/<str:patch>/<str:species>/<str:state>/take", plan.take, name="take"),
    path(T + "findings", plan.findings, name="findings"),
    path(T + "mix", plan.mix, name="mix"),
    path(T + "packet", plan.packet_page, name="packet"),
    path(T + "packet.pdf", plan.packet_pdf, name="packet-pdf"),
    path(T + "day", day.day, name="day"),
    path(T + "after", day.after, name="after"),
    path(T + "shelf", shelf.shelf, name="shelf"),
    path(T + "shelf/new", shelf.add, name="add-product"),
    path(T + "shelf/<path:product>/label", shelf.label, name="label"),
    path(T + "shelf/<path:product>/jug", shelf.jug, name="jug"),
    path(T + "shelf/<path:product>/edit", shelf.product, name="product"),
    path(T + "out", give.out, name="out"),
    path(T + "out/<str:what>", give.file, name="give"),
    path(T + "merge", give.merge, name="merge"),
]
