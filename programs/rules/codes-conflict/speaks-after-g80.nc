%
O1 (a safety line with G80, and the first height without a motion code; then behind cycles)
G21 G17 G40 G49 G80 G90 G94
G54
S3000 M3
G43 H2 Z5. ; expect codes-conflict warning @8 x3: no motion code since G80 in line 3 && followed as G0 && G0 or G1
G0 X0. Y0.
G81 X1. Z-1. R1. F100.
G80
X2.
X3.
G1 X4. F100.
G80
X5.
M5
M30
%
