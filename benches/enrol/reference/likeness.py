"""How often a person's own commands, and other words, are taken by likeness alone: the matcher of src/hear/commands/templates
written a second time, on features of the library kaldi-native-fbank, over people of the Speech Commands test part. The constants of
`pattern.rs` and `weigh.rs` were chosen with it on every other speaker ("odd").

pip install kaldi-native-fbank soundfile numpy scipy numba; python likeness.py DATA [odd|even]   (DATA: the folder with index.tsv)

Each speaker with four sayings of at least three words enrols three of each (also words that are no command: a client has twenty), and is tested
with the rest, the speaker's other words and 30 words of other people.
"""
import collections
import csv
import sys

import kaldi_native_fbank as knf
import numpy as np
import soundfile as sf
from numba import njit
from scipy.signal import lfilter

o=knf.FbankOptions(); o.frame_opts.samp_freq=16000;o.frame_opts.dither=0;o.frame_opts.window_type='hamming';o.frame_opts.preemph_coeff=.97;o.frame_opts.snip_edges=True
o.mel_opts.num_bins=23;o.mel_opts.low_freq=100;o.mel_opts.high_freq=7200;o.use_energy=False;o.energy_floor=0
def fb(x):
    f=knf.OnlineFbank(o);f.accept_waveform(16000,x.tolist());f.input_finished()
    n=f.num_frames_ready
    if n==0:return np.zeros((0,23),np.float32)
    return np.maximum(np.stack([f.get_frame(i) for i in range(n)])*10/np.log(10),-80).astype(np.float32)
def pad(x,a=.8,b=1.2):
    p=np.convolve(x**2,np.ones(320)/320)[:len(x)]
    q=np.sqrt(np.sort(p)[len(p)//10]*3); q=max(q,2e-5)
    r=np.random.RandomState(1)
    return np.concatenate([r.uniform(-q,q,int(a*16000)),x,r.uniform(-q,q,int(b*16000))])
def cut(x):
    x=np.round(np.clip(x,-1,1)*32767)/32768
    c=np.exp(-2*np.pi*120/16000)
    y=lfilter([c,-c],[1,-c],x)
    n=len(y)//480; P=(y[:n*480].reshape(n,480)**2).mean(1)
    m4=np.convolve(P,np.ones(4)/4,'valid'); fl=np.minimum.accumulate(m4); fl=np.concatenate([[fl[0]]*3,fl])
    fdb=np.clip(10*np.log10(fl+1e-12),-72,-45); L=10*np.log10(P+1e-12); ab=L-fdb
    parts=[]
    for i,a in enumerate(ab):
        if a>=6:
            if parts and i-parts[-1][1]<10: parts[-1][1]=i+1
            else: parts.append([i,i+1])
    parts=[p for p in parts if p[1]-p[0]>1]
    if not parts:return None
    s,e=parts[0][0]*480-1440,parts[-1][1]*480+1440
    w=fb(x[max(s,0):e]); nb=np.concatenate([fb(x[:max(s,0)]),fb(x[e:])])
    if len(w)==0:return None
    noise=nb.mean(0) if len(nb) else w.min(0)
    return dict(f=w,n=noise,ab=ab.max(),len=(parts[-1][1]-parts[0][0])*.03,parts=len(parts))
B=23
def table(C=12,L=22.):
    k=np.arange(1,C+1)[:,None];j=np.arange(B)[None]
    return np.sqrt(2/B)*np.cos(np.pi*k*(j+.5)/B)*(1+L/2*np.sin(np.pi*k/L))*np.log(10)/10
CHOSEN=dict(C=10,L=22.,over=4.,deep=-30.,lw=.35,sw=1.6,var=.5,fac=1.7)
def peak(t):
    m=np.sort(t['f'].max(1)); return m[min(len(m)*9//10,len(m)-1)]
def pat(t,floor,o):
    x=np.maximum(t['f']-peak(t),floor)
    c=np.hstack([x@table(o['C'],o['L']).T,o['lw']*x.mean(1,keepdims=True)])
    c=c-c.mean(0)
    if o.get('var'): c=c/(c.std(0)+o['var'])*5
    p=np.pad(c,((2,2),(0,0)),'edge')
    d=o['sw']*(2*(p[4:]-p[:-4])+(p[3:-1]-p[1:-3]))/10
    return np.ascontiguousarray(np.hstack([c,d]).astype(np.float32))
@njit(cache=True,fastmath=True)
def dtw(a,b,warp,fac,cap):
    n,m=len(a),len(b)
    if n>m*fac or m>n*fac: return 1e9
    reach=max(warp*max(n,m),abs(n-m)*.5+4)
    D=np.full((n+1,m+1),1e9,np.float32);D[0,0]=0
    for i in range(n):
        mid=i*m/n
        for j in range(max(0,int(mid-reach)),min(m-1,int(mid+reach))+1):
            s=0.
            for k in range(a.shape[1]):
                z=a[i,k]-b[j,k]; s+=z*z
            d=np.sqrt(s)
            if d>cap:d=cap
            D[i+1,j+1]=min(D[i,j]+2*d,D[i,j+1]+d,D[i+1,j]+d)
    return D[n,m]/(n+m)
def dist(a,b,o):
    fa=np.maximum(a['n']-peak(a)+o['over'],o['deep']);fbb=np.maximum(b['n']-peak(b)+o['over'],o['deep'])
    f=np.maximum(fa,fbb)
    return dtw(pat(a,f,o),pat(b,f,o),o.get('warp',.3),o.get('fac',2.2),o.get('cap',1e9))
def two(ds):
    ds=sorted(ds)
    return ds[0] if len(ds)==1 else .5*(ds[0]+ds[1]) if ds[1]<1e8 else 1.2*ds[0]
def speaker_tests(S,names,rng):
    """yields speaker,(enrolled words),tests [(kind,word,take)]"""
    for k,s in enumerate(names):
        W=S[s]
        en={w:t[:3] for w,t in W.items() if len(t)>=4}
        if not en: continue
        tests=[('own',w,t) for w in en for t in W[w][3:]]
        tests+=[('oov',w,t) for w in W if w not in en for t in W[w]]
        pool=[(w,t) for s2 in names if s2!=s for w in S[s2] if w not in en for t in S[s2][w]]
        for i in rng.permutation(len(pool))[:30]: tests.append(('str',)+pool[i])
        yield s,en,tests
def run(S,names,o,need=2):
    rng=np.random.RandomState(0);rows=[]
    for s,en,tests in speaker_tests(S,names,rng):
        if len(en)<need: continue
        ws=list(en)
        within={w:[two([dist(t,u,o) for j,u in enumerate(en[w]) if j!=i]) for i,t in enumerate(en[w])] for w in ws}
        oth={w:sorted(two([dist(t,u,o) for u in en[w]]) for v in ws if v!=w for t in en[v]) for w in ws}
        for kind,w,t in tests:
            d={v:two([dist(t,u,o) for u in en[v]]) for v in ws}
            rows.append((s,kind,w,t['ab'],t['len'],d,{v:(within[v],oth[v]) for v in ws}))
    return rows
def scores(rows,wid=1.45,least=1.12,q=.1):
    out=[]
    for s,kind,w,ab,ln,d,sc in rows:
        usual=np.median([np.mean([x for x in sc[v][0] if x<1e8] or [6]) for v in sc])
        r=[]
        for v in d:
            wi=.5*(np.mean([x for x in sc[v][0] if x<1e8] or [usual])+usual)
            o=[x for x in sc[v][1] if x<1e8]
            ot=np.clip(o[int(len(o)*q)] if o else 1e9,least*wi,wid*wi)
            r.append(((d[v]-wi)/(ot-wi),d[v]/wi,v))
        r.sort()
        out.append((s,kind,w,ab,r[0][0],(r[1][0] if len(r)>1 else 9)-r[0][0],r[0][2],r[0][1],(r[1][1] if len(r)>1 else 9)/r[0][1]))
    return out

if __name__=='__main__':
    data,odd=sys.argv[1],sys.argv[2:]==['odd']
    S=collections.defaultdict(lambda:collections.defaultdict(list))
    for r in csv.DictReader(open(data+'/index.tsv'),delimiter='\t'):
        if r['set']=='speech_commands_test_v002' and r['label']!='(noise)':
            c=cut(pad(sf.read(data+'/'+r['file'])[0]))
            if c: S[r['speaker']][r['label']].append(c)
    names=sorted(S);en=[s for s in names if any(len(t)>=4 for t in S[s].values())]
    half=slice(0,None,2) if odd else slice(1,None,2)
    names=sorted(en[half]+[s for s in names if s not in en][half])
    out=scores(run(S,names,CHOSEN,need=2 if odd else 3))
    misfit=lambda r:(r[7]-1)-.6*min(r[8]-1,.5)
    own=[(misfit(r),r[6]==r[2]) for r in out if r[1]=='own'];bad=[misfit(r) for r in out if r[1]!='own']
    for name,th in(('alone',-.25),('confirms a guess',.15)):
        print('%s: %d speakers, of %d own sayings %d right, %d wrong; of %d other words %d taken'%(name,len({r[0] for r in out}),len(own),
            sum(a<=th and c for a,c in own),sum(a<=th and not c for a,c in own),len(bad),sum(b<=th for b in bad)))
