package rondure.sky;

/**
 * Three numbers: a rotation vector (rad) or a spin (rad/s), about the axes x, y, z.
 *
 * @param x first
 * @param y second
 * @param z third
 */
record Vec(double x, double y, double z) {
  static final Vec ZERO = new Vec(0, 0, 0);

  static Vec of(double[] three) {
    return new Vec(three[0], three[1], three[2]);
  }

  /** The rotation vector of a rotation, rad. */
  static Vec log(Rotation turn) {
    Spin spin = turn.perSecond();
    return new Vec(spin.xRadPerS(), spin.yRadPerS(), spin.zRadPerS());
  }

  Rotation exp() {
    return Rotation.ofVector(x, y, z);
  }

  Spin spin() {
    return new Spin(x, y, z);
  }

  /** Component 0, 1 or 2. */
  double at(int axis) {
    return axis == 0 ? x : axis == 1 ? y : z;
  }

  double[] toArray() {
    return new double[] {x, y, z};
  }

  Vec turned(Rotation turn) {
    double length = length();
    if (!(length > 0)) {
      return ZERO;
    }
    Direction d = turn.apply(Direction.of(x, y, z));
    return new Vec(length * d.x(), length * d.y(), length * d.z());
  }

  Vec plus(Vec o) {
    return new Vec(x + o.x, y + o.y, z + o.z);
  }

  Vec minus(Vec o) {
    return new Vec(x - o.x, y - o.y, z - o.z);
  }

  Vec times(double factor) {
    return new Vec(factor * x, factor * y, factor * z);
  }

  double dot(Vec o) {
    return x * o.x + y * o.y + z * o.z;
  }

  Vec cross(Vec o) {
    return new Vec(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  /** Two directions across this vector and each other. */
  Vec[] across() {
    Vec axis = withLength(1);
    Vec helper = Math.abs(axis.x) < 0.7 ? new Vec(1, 0, 0) : new Vec(0, 1, 0);
    Vec first = axis.cross(helper).withLength(1);
    return new Vec[] {first, axis.cross(first)};
  }

  double length() {
    return Math.sqrt(x * x + y * y + z * z);
  }

  /** The same direction with another length; zero stays zero. */
  Vec withLength(double wanted) {
    double length = length();
    return length > 0 ? times(wanted / length) : ZERO;
  }
}
