-- Minutes of work to change a slot, as an outlet states them.

CREATE TABLE labour (
    revision  TEXT    NOT NULL,
    outlet_id TEXT    NOT NULL,
    slot      TEXT    NOT NULL,
    minutes   INTEGER NOT NULL,
    PRIMARY KEY (revision, outlet_id, slot),
    FOREIGN KEY (revision, outlet_id) REFERENCES outlet (revision, id)
) STRICT;
