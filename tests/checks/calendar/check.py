#!/usr/bin/env python3
"""Reads an export of a plan with Python's icalendar and dateutil (pip install icalendar python-dateutil).

    check.py FILE.ics

Checks what RFC 5545 asks of every event (UID, DTSTAMP, DTSTART; the start is the first instance of the rule), that times float, that each
alarm has an action, a description and a trigger before the start, and that lines end with CRLF and have at most 75 octets.
"""
import datetime
import sys

from dateutil.rrule import rrulestr
from icalendar import Calendar


def main():
    raw = open(sys.argv[1], "rb").read()
    lines = raw.split(b"\r\n")
    assert lines[-1] == b"" and b"\n" not in b"".join(lines), "CRLF"
    assert max(map(len, lines)) <= 75, "75 octets"
    calendar = Calendar.from_ical(raw)
    assert calendar["VERSION"] == "2.0" and calendar["PRODID"]
    uids = []
    for event in calendar.walk("VEVENT"):
        assert not event.errors, event.errors
        start = event["DTSTART"].dt
        assert start.tzinfo is None, "floating"
        assert event["DTSTAMP"].dt.tzinfo is not None, "UTC"
        times = list(rrulestr(event["RRULE"].to_ical().decode(), dtstart=start))
        assert times[0] == start and len(times) == event["RRULE"]["COUNT"][0]
        uids.append(str(event["UID"]))
        for alarm in event.walk("VALARM"):
            assert alarm["ACTION"] == "DISPLAY" and alarm["DESCRIPTION"]
            assert alarm["TRIGGER"].dt <= datetime.timedelta(0)
        print(event["SUMMARY"], times[0], "to", times[-1], len(times), "times,", event["DURATION"].dt, [str(alarm["TRIGGER"].dt) for alarm in event.walk("VALARM")])
    assert len(set(uids)) == len(uids) > 0


main()
