%
O1 (codes of different groups share a block)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 G91 X1. F100.
M30
%
