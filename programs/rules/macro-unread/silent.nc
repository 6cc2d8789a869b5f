%
O1 (parameters and expressions are read)
G21 G90 G17 G94
G54
#1=2
G0 X0. Y0. Z#1
G1 X[#1*2+.5] F100.
M30
%
