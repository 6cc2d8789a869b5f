%
O1 (near a half circle, in the plane of X and Z)
G21 G90 G18 G94
G54
G0 X1. Y1. Z2.
G2 X3.4 Z5.2 R2.01 F100. ; expect arc-ill-conditioned warning: an arc of 168.56° in radius form: the centre moves by 0.2498 µm when an end moves by 0.05 µm, allowed 0.1 µm && radius form is safe up to 165° (NISTIR 6556 section 3.5.3.1)
M30
%
