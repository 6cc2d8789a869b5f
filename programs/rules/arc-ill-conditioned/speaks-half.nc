%
O1 (a half circle, oblique: 2.4 and 3.2 make a chord of 4)
G21 G90 G17 G94
G54
G0 X1. Y1. Z1.
G2 X3.4 Y4.2 R2. F100. ; expect arc-ill-conditioned warning: an arc of 180° in radius form: no circle is left when an end moves by 0.05 µm, allowed 0.1 µm && radius form is safe up to 165° (NISTIR 6556 section 3.5.3.1)
M30
%
