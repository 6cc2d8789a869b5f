%
O1 (nearly a half circle in radius form)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X1.999 R1. F100. ; expect arc-ill-conditioned warning: the centre moves by 0.8004 µm when an end moves by 0.05 µm, allowed 0.1 µm && 165°
M30
%
