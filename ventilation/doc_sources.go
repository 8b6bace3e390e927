// # Sources
//
//	AixLib24    RWTH Aachen EBC, AixLib, Modelica library, package
//	            Airflow.WindowVentilation (2024): published formulas of hinged
//	            openings and single-sided flow with their references
//	Asce05      ASCE-EWRI, The ASCE standardized reference evapotranspiration
//	            equation, 2005 (equations and appendix C as in tests of the open
//	            libraries pyet and refet)
//	Baille01    A. Baille, C. Kittas, N. Katsoulas, "Influence of whitening on
//	            greenhouse microclimate and crop energy partitioning", Agric.
//	            Forest Meteorol. 107 (2001) 293-306 (abstract)
//	Baille94    M. Baille, A. Baille, J. C. Laury, "A simplified model for predicting
//	            evapotranspiration rate of nine ornamental species vs. climate
//	            factors and leaf area", Sci. Hortic. 59 (1994) 217-232 (form as
//	            quoted elsewhere, the table of crops not read)
//	Bb18        Building Bulletin 101, Guidelines on ventilation, thermal comfort
//	            and indoor air quality in schools, ESFA 2018, sec. 8.3; as tested
//	            in CERN's CAiMIRA
//	BoulardB95  T. Boulard, A. Baille, "Modelling of air exchange rate in a
//	            greenhouse equipped with continuous roof vents", J. agric. Engng
//	            Res. 61 (1995) 37-48 (as [Vanthoor11] quotes it)
//	Brown62     W. G. Brown, K. R. Solvason, "Natural convection through
//	            rectangular openings in partitions", Int. J. Heat Mass Transfer 5
//	            (1962) 859-868
//	Bs91        BS 5925:1991, Code of practice for ventilation principles and
//	            designing for natural ventilation
//	Buildings24 LBNL, Buildings, Modelica library (2024), package
//	            Airflow.Multizone and its reference results
//	ChiCol34    T. H. Chilton, A. P. Colburn, Ind. Eng. Chem. 26 (1934) 1183-1187
//	Daunicht71  H. Daunicht, Acta Horticulturae 17 (1971) 62-71 (abstract)
//	DeJong90    T. de Jong, Natural ventilation of large multi-span greenhouses,
//	            thesis, Wageningen 1990; coefficients as in H. F. de Zwart,
//	            Analyzing energy-saving options in greenhouse cultivation using a
//	            simulation model, thesis, Wageningen 1996 (from memory)
//	Din22       DIN/TS 4108-8:2022-09 (formula as in AixLib24)
//	Dowdy87     J. A. Dowdy, N. S. Karabash, "Experimental determination of heat
//	            and mass transfer coefficients in rigid impregnated cellulose
//	            evaporative media", ASHRAE Transactions 93 (1987) (from memory)
//	EnGlass11   EN 673:2011, Glass in building - Determination of thermal
//	            transmittance (surface coefficients from memory)
//	EnVent17    EN 16798-7:2017 and CEN/TR 16798-8 (formulas as in AixLib24)
//	EnWind05    EN 1991-1-4:2005, Eurocode 1, wind actions, sec. 4.3
//	            (read as quoted elsewhere)
//	FAO56       R. G. Allen and others, Crop evapotranspiration, FAO Irrigation
//	            and Drainage Paper 56, Rome 1998
//	GidsPhaff82 W. de Gids, H. Phaff, "Ventilation rates and energy consumption due
//	            to open windows", Air Infiltration Review 4 (1982) 4-5
//	HafPage     a page of greenhouse-management.com on circulating fans
//	Hagstrom99  K. Hagström, K. Sirén, A. M. Zhivov, Calculation Methods for Air
//	            Supply Design in Industrial Facilities, Helsinki University of
//	            Technology 1999 (formulas as in the open Python package hvac,
//	            air_diffusion.air_jets)
//	HoF17       ASHRAE Handbook - Fundamentals (SI), 2017, ch. 1, 16, 18
//	            (sol-air temperature, from memory), 20 (jets, from memory) and 24
//	HoF97       ASHRAE Handbook - Fundamentals (SI), 1997, ch. 25 eqs. 37 and 38
//	            (read as quoted elsewhere)
//	Hundy16     G. F. Hundy, A. R. Trott, T. C. Welch, Refrigeration, Air
//	            Conditioning and Heat Pumps, ch. 22 (example 22.1)
//	Kessler     J. R. Kessler, extension text on fan and pad cooling: the rate of 8
//	            cfm/ft² at 5000 foot-candles; factors from memory of P. V. Nelson,
//	            Greenhouse Operation and Management
//	Kittas97    C. Kittas, T. Boulard, G. Papadakis, "Natural ventilation of a
//	            greenhouse with ridge and side openings: sensitivity to
//	            temperature and wind effects", Trans. ASAE 40 (1997) 415-425 (as
//	            [Vanthoor11] quotes it)
//	Kittas97b   The same authors, "Greenhouse ventilation rates through combined
//	            roof and side openings: an experimental study", 1997 (abstract)
//	LarsenH08   T. S. Larsen, P. Heiselberg, "Single-sided natural ventilation
//	            driven by wind pressure and temperature difference", Energy and
//	            Buildings 40 (2008) 1031-1040 (formula as in AixLib24)
//	Liddament96 M. W. Liddament, A Guide to Energy Efficient Ventilation, AIVC 1996
//	LopezSonic11 A. López, D. L. Valera, F. Molina-Aiz, "Sonic anemometry to measure
//	            natural ventilation in greenhouses", Sensors 11 (2011) 9820-9838
//	            (abstract)
//	Miguel97    A. F. Miguel and others, "Analysis of the airflow characteristics
//	            of greenhouse screening materials", J. Agric. Eng. Research 67
//	            (1997) 105-112 (from memory)
//	MonsiSaeki53 M. Monsi, T. Saeki, Japanese J. Botany 14 (1953) 22-52
//	Monteith65  J. L. Monteith, Evaporation and environment, Symp. Soc. Exp.
//	            Biology 19 (1965) 205-234 (from memory)
//	NistAir89   G. N. Walton, AIRNET, NISTIR 89-4072, 1989: test cases as
//	            reproduced by NIST in contam-x-jr-ml
//	Papadakis96 G. Papadakis, M. Mermier, J. F. Meneses, T. Boulard, "Measurement
//	            and analysis of air exchange rates in a greenhouse with continuous roof
//	            and side openings", J. Agric. Eng. Research 63 (1996) 219-227 (abstract;
//	            title from memory)
//	PerezParra04 J. Perez Parra, E. Baeza, J. I. Montero, B. J. Bailey, "Natural
//	            ventilation of parral greenhouses", Biosystems Engineering 87 (2004)
//	            355-366 (as [Vanthoor11] quotes it)
//	PersilyIvy01 A. Persily, E. Ivy, Input data for multizone airflow and IAQ
//	            analysis, NISTIR 6585, 2001: values as in NIST's file of wind
//	            pressure profiles
//	PriestleyT72 C. H. B. Priestley, R. J. Taylor, Mon. Weather Rev. 100 (1972) 81-92
//	            (from memory); checked by T. A. McMahon and others, Hydrol. Earth
//	            Syst. Sci. 17 (2013) 1331-1363, supplement S19.109 (McMahon13)
//	SenScreen16 A. López and others, "Wind tunnel analysis of the airflow through
//	            insect-proof screens ...", Sensors 16 (2016) 690
//	Stanghellini87 C. Stanghellini, Transpiration of greenhouse crops: an aid to
//	            climate management, thesis, Wageningen 1987 (from memory)
//	SwaChan87   M. V. Swami, S. Chandra, "Procedures for calculating natural
//	            ventilation airflow rates in buildings", Florida Solar Energy
//	            Center, FSEC-CR-163-86, 1987
//	TeitelW14   M. Teitel, E. Wenger, "Air exchange and ventilation efficiencies of
//	            a monospan greenhouse with one inflow and one outflow through
//	            longitudinal side openings", Biosystems Engineering 119 (2014)
//	            98-107 (abstract)
//	Valera06    D. L. Valera and others, "Aerodynamic analysis of several
//	            insect-proof screens used in greenhouses", Spanish J. Agric.
//	            Research 4 (2006) 273-279 (coefficients from memory)
//	Vanthoor11  B. H. E. Vanthoor, C. Stanghellini, E. J. van Henten, P. H. B. de
//	            Visser, "A methodology for model-based greenhouse design: Part 1, a
//	            greenhouse climate model for a broad range of designs and
//	            climates", Biosystems Engineering 110 (2011) 363-377, electronic
//	            appendix
//	Vanthoor11b the same authors, Part 2, 378-395, electronic appendix
//	Warren84    P. R. Warren, L. M. Parkins, "Single-sided ventilation through open
//	            windows", Windows in Building Design and Maintenance, Gothenburg
//	            1984 (formula as in AixLib24)
package ventilation
