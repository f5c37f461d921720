"""Log mel energies of a formula's sound by kaldi-native-fbank, for src/hear/commands/templates/tests/mel.rs.

pip install kaldi-native-fbank numpy; python mel.py
"""
import kaldi_native_fbank as knf
import numpy as np

n = np.arange(720)
t = n / 16000
x = np.round(8000 * np.sin(2 * np.pi * (200 * t + 1500 * t * t * 20)) + 2000 * np.sin(2 * np.pi * 1000 * t)) / 32768
options = knf.FbankOptions()
options.frame_opts.samp_freq = 16000
options.frame_opts.dither = 0
options.frame_opts.window_type = "hamming"
options.frame_opts.preemph_coeff = 0.97
options.frame_opts.snip_edges = True
options.mel_opts.num_bins = 23
options.mel_opts.low_freq = 100
options.mel_opts.high_freq = 7200
options.use_energy = False
fbank = knf.OnlineFbank(options)
fbank.accept_waveform(16000, x.tolist())
fbank.input_finished()
for i in range(fbank.num_frames_ready):
    print("[" + ", ".join(f"{v:.3f}" for v in fbank.get_frame(i) * 10 / np.log(10)) + "],")
