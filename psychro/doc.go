// Package psychro computes moist air at reference accuracy: its states from
// any usual pair of inputs, all its properties, and what mixing, heating,
// cooling, humidifying and cold surfaces do to it.
//
// # What is modelled
//
// Air of one temperature, pressure and humidity, never above saturation: a
// State. RealGas, the default, is a mixture of real gases with second virial
// coefficients over the IAPWS saturation lines; IdealGas is the ASHRAE
// handbook's form and is chosen by name: psychro.IdealGas.FromWetBulb(...). The
// surface is ice below 0.01 °C and liquid water from that temperature up,
// unless a function with the word Over asks for the other one. Fog is not a
// State; it comes out of a Mixture with its water and its enthalpy.
//
// Relative humidity is the vapour pressure over that of saturated air of the
// same temperature and pressure. It is the same as the ratio of mole
// fractions, and differs from the degree of saturation, which is the ratio of
// humidity ratios. Above the boiling point, where no saturated air exists, it
// is the vapour pressure over the saturation pressure of pure water, and there
// is no degree of saturation.
//
// # Which function to use
//
// FromRelativeHumidity, FromHumidityRatio, FromDewPoint and FromWetBulb make a
// State of the real gas. All other pairs, and the ideal gas, are methods of
// Model: psychro.RealGas.FromEnthalpy(...). A State's methods give one property
// each; State.Properties gives all in one struct, including the less common
// ones that have no method of their own (entropy, mole fraction, specific
// humidity, the Prandtl, Schmidt and Lewis numbers, the psychrometric
// constant). Specific humidity q and mole fraction x need no constructor: the
// humidity ratio is q/(1 - q), the vapour pressure x p.
//
// A cold coil that all air leaves at one temperature is Stream.Coil; one known by the
// temperature of its surface and the share of air that passes it untouched,
// Stream.BypassedCoil.
//
// # What is not modelled
//
// Third virial coefficients and the air dissolved in water, which together move
// the enhancement factor by 0.006 % at most below 60 °C; salt and sorption; air
// whose composition differs from the atmosphere's; fog that has not settled at
// the temperature of its air; water hotter than its boiling point, and with it
// the latent heat above 110 °C. Transport properties are good to a per cent or
// two, the diffusivity to several per cent.
//
// # Accuracy
//
// Against [HerRP09], -40 to 60 °C and 70 to 105 kPa: humidity ratio 0.01 %,
// volume 0.004 %, enthalpy the larger of 20 J/kg and 0.03 %, heat capacity 0.2
// %, dew point 0.001 K from the relative humidity and 0.0015 K from the
// humidity ratio, wet bulb 0.0021 K. To 80 °C: humidity ratio 0.03 %, volume
// 0.02 %, heat capacity 0.6 %, dew point 0.003 K. Above 80 °C, in air near
// saturation, the error grows as the saturation pressure nears the total
// pressure, reaching 1.4 % of the humidity ratio just below boiling. Hot air of
// at most 0.05 kg/kg, 80 to 200 °C and 80 to 101 kPa, against IAPWS G8-10:
// volume 0.002 %, enthalpy 10 J/kg or 0.01 %, heat capacity 0.02 %. Against
// IAPWS alone, its humid air and fugacity formulations at random states:
// humidity ratio 0.015 %, volume 0.0021 %, enthalpy 11 J/kg, dew point and wet
// bulb 0.0017 K. The two references differ by 0.0023 % in volume, 0.0135 % in
// the enhancement factor and 9 J/kg in enthalpy to 40 °C: no model can be shown
// to be closer than that.
//
// # Pairs and their inverses
//
// Any pair turned into any other and back returns to 1e-9 in the humidity ratio
// and to 1e-9 K, from -20 to 80 °C, 2e-8 K to 200, where the relative humidity
// is above 1 % or the air is hot; in drier air the deficit, the enthalpy and
// the volume are those of dry air in all their digits but the last. In colder
// air the vapour counts for less in anything that sums air and vapour: specific
// volume returns to 4e-9 at -40 °C, 1e-6 at -70 and 6e-5 at -100; wet bulb and
// enthalpy with the dry bulb to 4e-8 at -70 and 4e-6 at -100. Air can be so dry
// that its dew point lies below -100 °C; such dew points are not accepted as
// input.
//
// Within 1 K of freezing a wet bulb has two branches: see State.WetBulb. Air
// saturated over ice just below 0.01 °C holds up to 1.3e-4 more vapour than air
// saturated over liquid just above: a pair without the dry bulb may then return
// the other of two states, within 0.002 K.
//
// # Batches
//
// The functions whose names end in To work on columns, such as a year of hours,
// with RealGas and at one pressure; their names say what the second column
// holds. A nil dst allocates; otherwise all slices have one length, or the call
// panics; dst may be one of the inputs. An hour whose inputs the constructor
// would refuse gives NaN, so that a gap in a record stays a gap.
//
// # Sources
//
//	ChiCol34    T. H. Chilton, A. P. Colburn, Ind. Eng. Chem. 26 (1934) 1183-1187
//	FAO56       R. G. Allen et al., Crop evapotranspiration, FAO Irrigation and
//	            Drainage Paper 56, 1998, ch. 3
//	HarHua07    A. H. Harvey, P. H. Huang, First-principles calculation of the
//	            air-water second virial coefficient, Int. J. Thermophys. 28 (2007)
//	HerRP09     S. Herrmann, H.-J. Kretzschmar, D. P. Gatley, Thermodynamic
//	            properties of real moist air (ASHRAE RP-1485), HVAC&R Res. 15
//	            (2009), as CoolProp 8.0 computes it
//	HoF17       ASHRAE Handbook - Fundamentals (SI), 2017
//	HylWex83    R. W. Hyland, A. Wexler, ASHRAE Trans. 89(2A) (1983) 500-535
//	IapwsAir15  IAPWS G11-15, Virial equation for the fugacity of H2O in humid air
//	IapwsCon11  IAPWS R15-11, Thermal conductivity of ordinary water substance
//	IapwsFull18 IAPWS R6-95(2018), Formulation 1995 for ordinary water substance
//	IapwsHum10  IAPWS G8-10, Equation of state for humid air in contact with
//	            seawater and ice, as python-iapws computes it
//	IapwsIce11  IAPWS R14-08(2011), Pressure along the melting and sublimation
//	            curves of ordinary water substance
//	IapwsIh09   IAPWS R10-06(2009), Equation of state 2006 for H2O ice Ih
//	IapwsIF07   IAPWS R7-97(2012), Industrial formulation 1997 (IF97), region 4
//	IapwsVis08  IAPWS R12-08, Viscosity of ordinary water substance
//	Massman98   W. J. Massman, Atmos. Environ. 32 (1998) 1111-1127
//	MasSax58    E. A. Mason, S. C. Saxena, Phys. Fluids 1 (1958) 361-369
//	UsStd76     U.S. Standard Atmosphere, 1976
//	Wilke50     C. R. Wilke, J. Chem. Phys. 18 (1950) 517-519
//	WMO08       WMO-No. 8, Guide to meteorological instruments, 2008 ed., annex 4.B
//
// # Functions
//
//	function                    equation                range             accuracy                 check
//	SaturationPressure, liquid  IapwsIF07 eq. 30        -40..200 °C       0.007 % (0..60 °C)       tables 35, 36; IAPWS-95
//	SaturationPressure, ice     IapwsIce11 eq. 6        -223..0.01 °C     1e-8 of eq. 6            its check value
//	EnhancementFactor           HylWex83 eq. 18         -100 °C..boiling  0.007 % (below 60 °C)    HylWex83 table 2
//	State.Enthalpy              HylWex83, virials       -100..200 °C      see Accuracy             HoF17 ch. 1 table 2; HerRP09; IapwsHum10
//	State.SpecificVolume        virials                 -100..200 °C      see Accuracy             HerRP09; IapwsHum10
//	State.HeatCapacity          slope of the enthalpy   -100..200 °C      see Accuracy             HerRP09; IapwsHum10
//	State.DewPoint              f ps = x p              the line's range  see Accuracy             HerRP09
//	State.WetBulb               HoF17 ch. 1 eq. 31      -100..200 °C      see Accuracy             HerRP09
//	Properties.Entropy          integral, virials       -100..200 °C      consistent with h, v     Maxwell's relations
//	IdealGas                    HoF17 ch. 1 eq. 20-35   -100..200 °C      exact                    handbook grid
//	LatentHeat                  enthalpy differences    -100..110 °C      0.013 % (below 90 °C)    IAPWS-95; R10-06
//	LiquidEnthalpy              fit to IapwsFull18      -40..110 °C       4 J/kg; 25 from -35..0   IAPWS-95; IF97
//	Mix, Stream.Changed, ...    balances                as the states     1e-9 of the balance      HoF17 ch. 1 ex. 2-6
//	Stream.BypassedCoil         straight line           bypass to 0.95    the convention's         a textbook's coil
//	StandardPressure            HoF17 ch. 1 eq. 3       -500..11000 m     exact                    HoF17 ch. 1 table 1
//	Viscosity, Conductivity     UsStd76 eq. 51, 53      -100..200 °C      1 %                      its values at 15 °C
//	State.Viscosity, ...        Wilke50, IAPWS vapour   -100..200 °C      about 2 %                limits
//	VapourDiffusivity           Massman98               -100..200 °C      7 %                      its value at 0 °C
//	State.LewisFactor           ChiCol34                -100..200 °C      about 10 %               its definition
//	State.VapourFlux            ChiCol34                -100..110 °C      about 10 %               worked figure
//
// # Known departures
//
// The polynomial over ice, the virial polynomials of air with water and of
// water with water, and the enthalpies of liquid water and ice are fits made
// for this library; tests compare each with the formula or the library values
// that it replaces. The latent heat lies up to 0.013 % below [IapwsFull18]
// and [IapwsIh09], 0.017 % above near 100 °C, since vapour is that of
// [HylWex83]. [IapwsAir15] prints a fugacity at 1 MPa and a mole fraction of
// 0.1, thirty times saturated: with second virials alone it comes out 1.7 %
// high; near saturation at 0.1 MPa it is 0.008 %. Tables 2.3 and 2.4 of [FAO56]
// were read in a transcription; its rows from 35 °C on do not follow from eq.
// 11 and are marked. The handbook's own wet bulbs near freezing take the liquid
// or the iced bulb by a rule that its text does not give; ours is stated at
// State.WetBulb.
package psychro
