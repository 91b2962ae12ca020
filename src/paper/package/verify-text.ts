import { MANIFEST, SUMS } from './hashed-zip.ts';

/** How anybody checks the package without the program that made it. The lines of Python are run by a test. */
export const VERIFY_TEXT = `HOW TO VERIFY THIS PACKAGE WITHOUT THE PROGRAM THAT MADE IT

1. The files. Unpack the archive and, in its folder, run

     sha256sum -c ${SUMS}

   Every line must end in "OK". ${SUMS} lists every file but itself; ${MANIFEST} says
   the same with sizes, the job, the design version and the as-of time. Whoever hands the
   package over should write the SHA-256 of ${SUMS} into the transmittal: with that one
   number on paper, no file can be changed unseen.

2. The audit trail. audit-trail.jsonl holds one entry a line, the oldest first. Each names the
   hash of the one before it; the first names 64 zeros. An entry's hash is the SHA-256 of its
   canonical JSON (keys in order, no spaces, UTF-8) over the keys action, at, chain,
   detailHash, money, previousHash, seq, subject, subjectId, userId and userName. detailHash is
   the SHA-256 of the canonical JSON of {"after": ..., "before": ...}, null where there is none;
   entries that touch money are given without the two, and still verify. In Python:

--- verify.py
import hashlib, json
previous, count = "0" * 64, 0
for line in open("audit-trail.jsonl", encoding="utf-8"):
    entry = json.loads(line)
    count += 1
    head = {k: v for k, v in entry.items() if k not in ("before", "after", "hash")}
    text = json.dumps(head, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    found = hashlib.sha256(text.encode()).hexdigest()
    if entry["seq"] != count or entry["previousHash"] != previous or entry["hash"] != found:
        raise SystemExit("the chain breaks at entry %d" % count)
    previous = found
manifest = json.load(open("manifest.json", encoding="utf-8"))
if manifest["audit"] != {"entries": count, "head": previous}:
    raise SystemExit("the trail is not the one the manifest names")
print("the chain holds: %d entries, head %s" % (count, previous))
---

3. The same record gives the same bytes: nothing in the package is taken from the clock. Two
   packages of one as-of time with different hashes are not of the same record, or were made by
   different editions of the program.

This package is a record. Nothing in it is a permission to energise or to touch.
`;
