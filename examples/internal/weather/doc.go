// Package weather reads a year of hourly weather, or a part of one, into plain
// columns of equal length: value i is the mean over hour i, in local standard
// time. What a file leaves out is worked out where a published formula allows
// it, and the result tells how many hours that was.
//
//	series, err := weather.Read(file, weather.Options{Fill: true})
//
// # Formats, told apart by their first lines
//
// Cloche's own CSV. Comment lines with the site come first, then the names of
// the columns, then a line an hour:
//
//	# Cloche weather 1
//	# name: an invented place
//	# latitude_deg: 50.6
//	# longitude_deg: 14.1
//	# zone_h: 1
//	# altitude_m: 340
//	time,temperature_c,relative_humidity,global_w_m2
//	2001-01-01T00:00,-2.5,0.9,0
//
// The first line may be left out, and so may the site where the caller has
// one. Further keys are source and typical_year (yes or no). The columns, in
// any order:
//
//	time                       start of the hour: 2001-07-01T13:00, in local standard time,
//	                           or with Z or an offset such as +02:00
//	time_ending                or the end of the hour
//	temperature_c              °C, needed
//	dew_point_c                °C, over liquid water; this or the next is needed
//	relative_humidity          fraction, over liquid water below freezing too;
//	relative_humidity_percent  or in per cent
//	global_w_m2                W/m² on the horizontal, needed
//	direct_w_m2                W/m² across the beam
//	diffuse_w_m2               W/m² from the sky on the horizontal
//	sky_w_m2                   W/m², heat radiation of the sky on the horizontal
//	cloud                      fraction of the sky hidden by clouds;
//	cloud_percent              or in per cent
//	wind_m_s                   m/s
//	wind_from_deg              degree clockwise from north, whence it blows
//	pressure_pa                Pa at the site
//
// Without a column for time the file has 8,760 or 8,784 hours from 1 January.
// A file in summer time needs offsets: without them an hour is missing in
// spring and one comes twice in autumn.
//
// TMY3 of the US National Renewable Energy Laboratory [Wilcox08]: hours are
// named by their end; radiation is the sum of the hour, all else is read at its
// end. The state of an hour here is the mean of the readings at its two ends.
// Cloud is the opaque cover.
//
// An excerpt of TMY3: the same columns under the names month, day, hour_ending,
// dry_bulb_c, dew_point_c, relative_humidity_pct, pressure_mbar, wind_m_s,
// wind_from_deg, global_horizontal_w_m2, direct_normal_w_m2,
// diffuse_horizontal_w_m2, total_cloud_tenths and opaque_cloud_tenths, as far as
// they are there; without a site.
//
// The CSV of a typical year from PVGIS of the European Commission's Joint
// Research Centre: stamps in UTC, state read at the stamp, radiation for the
// instant that lies the file's irradiance time offset after it. That instant
// is taken to stand for the hour around it, and the two such hours that an hour
// here overlaps are weighed by the overlap, so that sums keep. The file knows no
// zone: it is the whole hour nearest to the longitude unless Options gives one.
// A whole year is turned so that it begins with the local year.
//
// Files may be compressed by gzip. A field that is empty, NaN, NA, null, -9999,
// -9900, 9999 or 99999 is a missing value. Dates lie in 1951 to 2099.
//
// # What is worked out
//
// Where a file has both dew point and relative humidity, the dew point counts.
// Weather services state both over liquid water at all temperatures [WMO8];
// RelativeHumidity is that of package psychro, over ice below freezing, so that
// fog at -10 °C would be 1.1: it is held at 1 and counted. Below -40 °C, where
// water does not stay liquid, both are taken as over ice. Beam and diffuse come
// from the global radiation by Erbs where both are missing, or one from the
// other where one is known; with the sun below 3 degree all is diffuse, and so
// is what an hour without sun still has. Pressure comes from the altitude. The
// heat radiation of the sky is left NaN where it is missing, for the caller to
// fill with FillSky: from the cloud where that is known, and else from the
// humidity alone.
//
// # The sky against measured radiation
//
// A test holds the sky of package envelope, which callers hand to FillSky, to two
// short measured records under testdata. On an open roof at 56 degree north it is 7
// W/m² too cold under a clear sky and 2 W/m² under a dull one, with a scatter of 1
// W/m² (22 readings of one winter's day). In a clearing at 1325 m between slopes it
// is 9 to 12 W/m² too cold under cloud and 33 W/m² under a clear sky, with a
// scatter of 6 (82 hours): there trees and slopes fill a part of the view, and a
// house loses less than under an open sky.
//
// # Sources
//
//	Wilcox08  S. Wilcox, W. Marion, Users manual for TMY3 data sets,
//	          NREL/TP-581-43156, revised May 2008; the columns of the files
//	          themselves, the rule for the hour as in the manual of the TMY2
//	PVGIS     Joint Research Centre, PVGIS typical meteorological year
//	          generator, page on its outputs
//	WMO8      World Meteorological Organization, Guide to meteorological
//	          instruments and methods of observation, WMO-No. 8 (from memory)
package weather
