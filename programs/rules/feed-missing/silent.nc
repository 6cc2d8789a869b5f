%
O1 (the feed stands in the first feed block)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F0.1
X2.
M30
%
