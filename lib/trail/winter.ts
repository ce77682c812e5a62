/**
 * The months a place has snow to ride on, coldest in the middle, by hemisphere: November to March north of the
 * equator, May to September south of it. On the equator itself, where only height makes winter, the northern months.
 *
 * @param latitude degrees, north positive
 */
export function winterMonths(latitude: number): readonly number[] {
  return latitude < 0 ? [5, 6, 7, 8, 9] : [11, 12, 1, 2, 3];
}
