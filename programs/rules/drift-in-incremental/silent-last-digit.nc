%
O1 (0.05 and 0.05 um too much, and a whole number of increments)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G91
G1 X1.00005 F100. (hairline: accept digits-below-resolution: two of them stay within one increment)
X1.00005 (hairline: accept digits-below-resolution: two of them stay within one increment)
X1.0001
G90
M30
%
