"""Export, reading back, and the graph."""
import shutil

import numpy as np
import pytest
import torch

import export
import net as definition
import read_model
from net import LEFT, RIGHT, Net, grow


def random_net(seed=0, shape=definition.SHAPE):
    torch.manual_seed(seed)
    net = Net(shape=shape)
    for bn in [net.b0, net.b1, *net.bn]:
        bn.running_mean.normal_(0, .3)
        bn.running_var.uniform_(.5, 2)
        bn.weight.data.uniform_(.5, 1.5)
        bn.bias.data.normal_(0, .2)
    net.mean.normal_(0, 5)
    net.std.uniform_(3, 20)
    return net.eval()


@pytest.mark.parametrize("shape", [definition.SHAPE, (64, 96, 32)])
@pytest.mark.parametrize("bits,limit", [(32, 1e-3), (16, 2e-2), (8, 4.0)])
def test_what_is_written_reads_back(tmp_path, shape, bits, limit):
    net, x = random_net(shape=shape), torch.randn(2, 61, 40) * 15
    export.export(net, tmp_path, bits)
    back = read_model.load(tmp_path / "am/final.mdl")
    assert back.shape == shape
    with torch.no_grad():
        assert (net(x) - back(x)).abs().max() < limit


def test_calibration_keeps_the_function(tmp_path):
    export.export(random_net(), tmp_path, 32)
    net, x = read_model.load(tmp_path / "am/final.mdl"), torch.randn(2, 90, 40) * 15
    with torch.no_grad():
        before = net(x)
        after = read_model.calibrate(net, torch.randn(4, 200, 40) * 15 + 3)(x)
    assert (before - after).abs().max() < 1e-2


def test_a_grown_net_begins_as_the_smaller_one(monkeypatch):
    old, x = random_net(), torch.randn(2, 61, 40) * 15
    with torch.no_grad():
        expected = old(x)
        monkeypatch.setattr(definition, "BLOCKS", [*definition.BLOCKS, ((-1, 0), (-1, 0))])
        monkeypatch.setattr(definition, "LEFT", definition.LEFT + 6)
        first, dim, neck = definition.SHAPE
        grown = grow(Net(shape=(first, dim, neck + 16)), old.state_dict(), start=0.0).eval()
        assert len(grown.fa) == len(old.fa) + 1 and grown.fa[0].weight.shape[0] == old.fa[0].weight.shape[0] + 16
        assert (expected - grown(x)).abs().max() < 1e-3


def test_context_is_what_the_file_says():
    """An output depends on LEFT frames before and RIGHT after it, and on none beyond."""
    net, x = random_net(), torch.randn(1, 300, 40) * 15
    x.requires_grad_()
    net(x)[0, 50].square().sum().backward()
    used = np.nonzero(x.grad[0].abs().sum(1).numpy())[0]
    assert used[0] >= 150 - LEFT and used[-1] <= 150 + RIGHT
    assert used[0] <= 150 - LEFT + 3 and used[-1] >= 150 + RIGHT - 3


@pytest.mark.skipif(not shutil.which("fstconvert"), reason="libfst-tools is not installed")
def test_libvosk_scores_as_the_network_does(tmp_path):
    """The whole path: a random model loads, and decodes without a crash."""
    vosk = pytest.importorskip("vosk")
    import graph
    vosk.SetLogLevel(-1)
    export.export(random_net(), tmp_path, 8)
    graph.build(["yes", "no", "stop"], tmp_path)
    recogniser = vosk.KaldiRecognizer(vosk.Model(str(tmp_path)), 16000, '["yes", "no", "[unk]"]')
    recogniser.AcceptWaveform((np.random.default_rng(0).standard_normal(16000) * 1000).astype(np.int16).tobytes())
    assert "text" in recogniser.FinalResult()
