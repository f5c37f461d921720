#!/usr/bin/env python3
"""Reads a folder of `tidecount export csv --out FOLDER` with pandas, frictionless and csvw.

    pip install pandas frictionless csvw
    check.py FOLDER
"""
import json
import pathlib
import sys

import pandas
from csvw import TableGroup
from frictionless import Resource, system


def main():
    folder = pathlib.Path(sys.argv[1])
    metadata = json.loads((folder / "csv-metadata.json").read_text())
    # CSVW: every cell has its datatype, keys are unique, foreign keys lead somewhere.
    group = TableGroup.from_file(folder / "csv-metadata.json")
    for table in group.tables:
        rows = list(table.iterdicts(strict=True))
        table.check_primary_key()
        print("csvw", table.url.string, len(rows), "rows")
    assert group.check_referential_integrity() in (None, True)
    with system.use_context(trusted=True):
        for table in metadata["tables"]:
            report = Resource(path=str(folder / table["url"])).validate()
            assert report.valid, report.flatten(["rowNumber", "fieldNumber", "type", "note"])
            print("frictionless", table["url"], "valid")
    for table in metadata["tables"]:
        columns = table["tableSchema"]["columns"]
        frame = pandas.read_csv(folder / table["url"], keep_default_na=False, dtype=str)
        assert list(frame.columns) == [column["name"] for column in columns]
        for column in columns:
            cells = frame[column["name"]][frame[column["name"]] != ""]
            if column["datatype"] in ("integer", "decimal"):
                pandas.to_numeric(cells, errors="raise")
            if column["datatype"] == "dateTimeStamp":
                pandas.to_datetime(cells, utc=True, format="ISO8601", errors="raise")
        print("pandas", table["url"], frame.shape)
    dictionary = pandas.read_csv(folder / "data-dictionary.csv")
    assert len(dictionary) == sum(len(table["tableSchema"]["columns"]) for table in metadata["tables"])


main()
