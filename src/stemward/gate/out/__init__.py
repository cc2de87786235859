"""What a person takes away from a tract, as bytes: the folder as one zip, tables, geodata, a calendar."""

from stemward.gate.out.calendar import Due, Meeting, calendar
from stemward.gate.out.geodata import geojson, geopackage, gpx
from stemward.gate.out.record_files import record_rows_csv, record_rows_json
from stemward.gate.out.tables import stems_csv, stems_xlsx
from stemward.gate.out.zipped import NotAFolder, folder_unzip, folder_zip

__all__ = [
    "Due", "Meeting", "NotAFolder", "calendar", "folder_unzip", "folder_zip", "geojson", "geopackage", "gpx",
    "record_rows_csv", "record_rows_json", "stems_csv", "stems_xlsx",
]  # fmt: skip
