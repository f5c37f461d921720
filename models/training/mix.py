"""A model between two models of one shape of which the second was trained on from the first: the weighted average of their weights.

usage: mix.py OLD/am/final.mdl NEW/am/final.mdl SHARE_OF_THE_NEW OUT_DIR"""
import sys

import export
import read_model


def mixed(old, new, share):
    a, b = read_model.load(old), read_model.load(new).state_dict()
    # The intermediate head is random in both, for the files lack it; nothing that is exported needs it.
    a.load_state_dict({k: v.lerp(b[k], share) if v.is_floating_point() else v for k, v in a.state_dict().items()})
    return a


if __name__ == "__main__":
    # The blank has been weakened already when these files were written.
    export.export(mixed(sys.argv[1], sys.argv[2], float(sys.argv[3])), sys.argv[4])
