"""Turns schema.sql and migrations/NNNN.sql (or NNNN_what.sql) into one C file, so that the binary carries them.

usage: embed.py OUTPUT.c SCHEMA.sql MIGRATION.sql...
"""
import pathlib
import sys


def array(name, path):
    data = path.read_bytes() + b"\0"
    rows = (data[i : i + 24] for i in range(0, len(data), 24))
    body = "\n".join("    " + " ".join(f"{byte}," for byte in row) for row in rows)
    return f"{name}[] = {{\n{body}\n}};\n"


def main(output, schema, *migrations):
    paths = sorted(map(pathlib.Path, migrations))
    versions = [int(path.stem[:4]) for path in paths]
    if versions != sorted(set(versions)) or versions[0] != 1:
        sys.exit(f"migrations are not numbered upwards from 1, each once: {versions}")
    parts = ['#include "store_migrate.h"\n', array("const char schema_sql", pathlib.Path(schema))]
    parts += [array(f"static const char migration_{version}", path) for version, path in zip(versions, paths)]
    parts.append("const struct migration schema_migrations[] = {")
    parts += [f"    {{{version}, migration_{version}}}," for version in versions]
    parts.append("};\n")
    parts.append(f"const size_t schema_migration_count = {len(paths)};")
    pathlib.Path(output).write_text("\n".join(parts) + "\n")


main(*sys.argv[1:])
