%
O1 (nothing stated at the start)
G54
G0 X0. Y0. Z1. ; expect start-state-assumed warning: units not stated | expect start-state-assumed warning: distance
G1 X1. F100. ; expect start-state-assumed warning: feed mode
G2 X2. I0.5 ; expect start-state-assumed warning: plane
M30
%
