#!/usr/bin/env python3
"""Checks a published journal of the big-tree registry by itself.

usage: check_journal.py journal.jsonl [NUMBER:HASH ...]

journal.jsonl is what /exports/journal.jsonl answers. NUMBER:HASH is a seal that was written down earlier, on paper, in a
newspaper or on another machine; without one, only what was published together is compared with itself. Needs nothing but
Python 3. Answers 0 and "whole", or 1 and the first entry that is wrong.

Every change has a line with its county, number, instant, the SHA-256 of its entry (digest) and a hash, which is the
SHA-256 of the hash before it in the county followed by the digest, as bytes. Every seal has a line with its number, the
text that was sealed, which names the last number and hash of each county, and a hash, which is the SHA-256 of the hash
of the seal before it followed by the SHA-256 of the text.
"""

import hashlib
import json
import sys


class Wrong(Exception):
    """What is wrong, and where."""


def sha256(data):
    return hashlib.sha256(data).digest()


def read(path):
    with open(path, encoding="utf-8") as lines:
        for number, line in enumerate(lines, 1):
            try:
                yield number, json.loads(line)
            except ValueError:
                raise Wrong(f"line {number} is not JSON") from None


def follow_change(line, change, heads, hashes):
    county, seq = change["county"], change["seq"]
    name = f"line {line}: {county}, change {seq}, of {change['recordedAt']}"
    last, chain, at = heads.get(county, (0, b"", ""))
    if seq != last + 1:
        raise Wrong(f"{name}: follows change {last}")
    if change["recordedAt"] <= at:
        raise Wrong(f"{name}: is not later than the change before it")
    chain = sha256(chain + bytes.fromhex(change["digest"]))
    if chain.hex() != change["hash"]:
        raise Wrong(f"{name}: its hash does not follow from its digest and the hash before it")
    heads[county] = (seq, chain, change["recordedAt"])
    hashes[county, seq] = change["hash"]


def follow_seal(line, seal, last, sealed, hashes):
    number, chain = last
    name = f"line {line}: seal {seal['seal']}"
    if seal["seal"] != number + 1:
        raise Wrong(f"{name}: follows seal {number}")
    chain = sha256(chain + sha256(seal["text"].encode("utf-8")))
    if chain.hex() != seal["hash"]:
        raise Wrong(f"{name}: its hash does not follow from its text and the seal before it")
    told = json.loads(seal["text"])
    if told["number"] != seal["seal"]:
        raise Wrong(f"{name}: its text is that of seal {told['number']}")
    heads = {head["county"]: head for head in told["heads"]}
    for county, seq in sealed.items():
        if county not in heads or heads[county]["seq"] < seq:
            raise Wrong(f"{name}: change {seq} of {county} was sealed before, and is not in it")
    for county, head in heads.items():
        if hashes.get((county, head["seq"])) != head["hash"]:
            raise Wrong(f"{name}: change {head['seq']} of {county} is not the one that was sealed")
        sealed[county] = head["seq"]
    return seal["seal"], chain


def check(path, noted):
    heads, hashes, sealed, seals = {}, {}, {}, {}
    last = (0, b"")
    for line, told in read(path):
        try:
            if "seal" in told:
                last = follow_seal(line, told, last, sealed, hashes)
                seals[last[0]] = told["hash"]
            else:
                follow_change(line, told, heads, hashes)
        except (KeyError, TypeError, ValueError) as cause:
            raise Wrong(f"line {line} can't be read: {cause!r}") from None
    for number, noted_hash in noted:
        if seals.get(number) != noted_hash:
            raise Wrong(f"seal {number} is {seals.get(number, 'not there')}, but {noted_hash} was written down")
    behind = sum(seq for seq, _, _ in heads.values()) - sum(sealed.values())
    return (f"whole: {len(hashes)} changes of {len(heads)} counties, {len(seals)} seals, {behind} changes not sealed yet, "
            f"{len(noted)} seals as written down")


def main(arguments):
    if not arguments or arguments[0] in ("-h", "--help"):
        print(__doc__)
        return 2
    noted = [(int(number), value.lower()) for number, value in (word.split(":", 1) for word in arguments[1:])]
    try:
        print(check(arguments[0], noted))
        return 0
    except Wrong as wrong:
        print(wrong)
        return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
