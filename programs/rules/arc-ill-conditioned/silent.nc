%
O1 (a last digit less: just less than 165 degrees, more than 195, less than 345)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X1.9828 R1. F100.
G0 X0.
G2 X1.9828 R-1.
G0 X0.
G2 X0.2611 R-1.
M30
%
