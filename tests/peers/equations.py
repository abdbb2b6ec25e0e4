"""The circuit's equations stated a second time, from published sources and the numbers that
`pinhole trace --circuit` writes, for casadi.

Written from docs/physics.md and the sources named beside each law, not from the Rust code. The smoothing
(straight line near rest, valve lifts, friction at rest) belongs to the equations and is stated here too.
"""

import casadi as ca
import numpy as np

# Row 6.7 of the check values: open-circuit voltage of a lead-acid battery at 0, 25, 50, 75, 100 % charge.
BATTERY_V = [11.89, 12.06, 12.24, 12.45, 12.65]
# Row 2.16 (Perry): discharge coefficient of a sharp-edged hole, powers of p2/p1 from 0 up.
PERRY = [0.8414, -0.1002, 0.8415, -3.9, 4.6001, -1.6827]

SCALE = {"mass": None, "energy": None, "travel": 1e-3, "speed": 100.0, "pointer": 1e4, "manifold": 1e5,
         "winding": 300.0, "case": 300.0, "surroundings": 300.0, "charge": 1.0, "fuse_heat": 1.0,
         "filament": 1000.0, "run_time": 100.0}


def smoothstep(x):
    x = ca.fmin(ca.fmax(x, 0), 1)
    return x * x * (3 - 2 * x)


class Equations:
    """f(y, told) and what can be read from it, as casadi expressions."""

    def __init__(self, circuit):
        self.c = circuit
        self.k = dict(circuit["constants"])
        self.p_atm = circuit["p_atm"]
        self.machines = {m["part"]: (next(iter(m["kind"])), next(iter(m["kind"].values())), m)
                         for m in circuit["machines"]}
        self.vars = circuit["vars"]
        self.n = len(self.vars)
        self.at = {(v["is"], v["of"]): i for i, v in enumerate(self.vars)}
        self.scale = np.array([self._scale(i) for i in range(self.n)])
        self._told_names()
        self._build()

    def _scale(self, i):
        v = self.vars[i]
        if v["is"] in ("mass", "energy"):
            m3 = self.c["volumes"][v["of"]]["m3"]
            u = 1e5 * m3 / (self.k["gamma"] - 1)
            return u if v["is"] == "energy" else 1e5 * m3 / (self.k["r_air"] * 293.15)
        return SCALE[v["is"]]

    def _told_names(self):
        names = ["key", "engine", "pedal", "room"]
        names += [f"target{p}" for p, (kind, _, _) in self.machines.items() if kind == "Engine"]
        names += [f"speed{p}" for p, (kind, _, _) in self.machines.items() if kind == "EnginePump"]
        for p in self.machines:
            names += [f"closed{p}", f"melted{p}", f"pressed{p}", f"strokes{p}", f"awake{p}"]
        self.told_names = names

    def told_values(self, told):
        """A line of the file's `told` as numbers in the order of the parameters."""
        v = {"key": told["key_on"], "engine": told["engine_runs"], "pedal": told["pedal_n"],
             "room": told["surroundings_k"]}
        v |= {f"target{p}": pa for p, pa in told["manifold_target"]}
        v |= {f"speed{p}": w for p, w in told["speed_target"]}
        for p, (closed, melted, pressed, strokes, awake) in enumerate(told["parts"]):
            v |= {f"closed{p}": closed, f"melted{p}": melted, f"pressed{p}": pressed, f"strokes{p}": strokes,
                  f"awake{p}": awake}
        return np.array([float(v[n]) for n in self.told_names])

    # ---- laws -------------------------------------------------------------------------------------

    def iso(self, c, b, pa, ta, pb, tb):
        """ISO 6358, the same both ways; straight above r_laminar."""
        k = self.k
        pu, pd, tu = ca.fmax(pa, pb), ca.fmin(pa, pb), ca.if_else(pa >= pb, ta, tb)
        r = pd / pu
        x = (ca.fmin(ca.fmax(r, b), k["r_laminar"]) - b) / (1 - b)
        psi = ca.sqrt(1 - x * x)
        edge = np.sqrt(1 - ((k["r_laminar"] - b) / (1 - b)) ** 2)
        psi = ca.if_else(r < k["r_laminar"], psi, edge * (1 - r) / (1 - k["r_laminar"]))
        m = c * k["rho_0"] * pu * ca.sqrt(k["t_0"] / tu) * psi
        return ca.if_else(pa >= pb, m, -m)

    def hole(self, area, ideal, pa, ta, pb, tb):
        """Saint-Venant and Wantzel, with Perry's coefficient."""
        k, g = self.k, self.k["gamma"]
        pu, pd, tu = ca.fmax(pa, pb), ca.fmin(pa, pb), ca.if_else(pa >= pb, ta, tb)

        def flow_function(r):
            cd = 1.0 if ideal else sum(a * r**i for i, a in enumerate(PERRY))
            critical = (2 / (g + 1)) ** (g / (g - 1))
            rc = ca.fmax(r, critical)
            return cd * ca.sqrt(g / (g - 1) * (rc ** (2 / g) - rc ** ((g + 1) / g)))

        r, rl = pd / pu, k["r_laminar"]
        phi = ca.if_else(r < rl, flow_function(ca.fmin(r, rl)),
                         float(flow_function(ca.DM(rl))) * (1 - r) / (1 - rl))
        m = area * pu * ca.sqrt(2 / (k["r_air"] * tu)) * phi
        return ca.if_else(pa >= pb, m, -m)

    def open_share(self, collapse, below):
        """What a soft hose has left with the air inside `below` under the air outside."""
        k = self.k
        return 1 - collapse * smoothstep((below - k["soft_begins_pa"]) / k["soft_span_pa"])

    def flow(self, law, a, b, soft=None):
        (pa, ta), (pb, tb), k = a, b, self.k
        if soft:
            x, y = (self.open_share(s[0], self.p_atm - p) for s, p in zip(soft, (pa, pb)))
            left = 1 / ca.sqrt(1 + soft[0][1] * (1 / x**2 - 1) + soft[1][1] * (1 / y**2 - 1))
            law = law | {"c": law["c"] * left}
        t = lambda name: self.told[name]
        match law["is"]:
            case "iso":
                return self.iso(law["c"], law["b"], pa, ta, pb, tb)
            case "hole":
                return self.hole(law["area"], law["ideal"], pa, ta, pb, tb)
            case "gap":
                return self.hole(ca.if_else(t("engine") > 0.5, law["shaking"], law["still"]), False, pa, ta, pb, tb)
            case "seep":
                return law["k"] * (pa**2 - pb**2)
            case "check":
                s = smoothstep((pa - pb - law["crack"]) / law["span"])
                lift = law["lift_min"] + (1 - law["lift_min"]) * s
                m = lift * self.iso(law["c"], law["b"], pa, ta, pb, tb)
                return m + (self.hole(law["leak"], False, pa, ta, pb, tb) if law["leak"] > 0 else 0)
            case "admit":
                b_, e = self.valve_force(law["part"])
                return smoothstep(e / b_["valve_span_n"]) * self.iso(law["c"], law["b"], pa, ta, pb, tb)
            case "equalise":
                b_, e = self.valve_force(law["part"])
                pre = b_["valve_preload_n"]
                s = smoothstep((-e - 0.2 * pre) / (0.8 * pre))
                return s * self.iso(law["c"], law["b"], pa, ta, pb, tb)
            case "suction":
                omega = self.y[self.at["speed", law["part"]]]
                return law["swept"] * ca.fmax(omega, 0) * pa / (k["r_air"] * ta)
            case "strokes":
                return t(f"strokes{law['part']}") * law["stroke"] * ca.fmax(pa - law["ultimate"], 0) / (k["r_air"] * ta)
            case "vent":
                return t(f"pressed{law['part']}") * self.hole(law["area"], False, pa, ta, pb, tb)
        raise ValueError(f"unknown law {law}: state it in tests/peers/equations.py")

    # ---- booster ----------------------------------------------------------------------------------

    def brake_force(self, b, x):
        over_cm = ca.fmax((x * 1e3 - b["brake_free_mm"] + b["rod_mm"]) * 0.1, 0)
        return b["brake_kn_per_cm2"] * 1e3 * over_cm**2

    def valve_force(self, part):
        b = self.machines[part][1]
        felt = ca.fmax(self.brake_force(b, self.y[self.at["travel", part]]) - b["jump_in_n"], 0)
        return b, self.told["pedal"] * b["pedal_ratio"] - b["valve_preload_n"] - felt / b["servo_ratio"]

    # ---- wiring -----------------------------------------------------------------------------------

    def wiring(self):
        """Node voltages of G v = i, and per pole voltage, conductance and current."""
        c, y, n = self.c, self.y, self.c["nodes"]
        g_matrix, rhs = ca.SX(n - 1, n - 1), ca.SX.zeros(n - 1)
        for j in range(n - 1):
            g_matrix[j, j] = self.k["g_loose_s"]
        poles = []
        for p in c["poles"]:
            part, (_, num, _) = p["part"], self.machines[p["part"]]
            emf = p["emf"]
            if p["is"] == "motor":
                dt = y[self.at["winding", part]] - 293.15
                g = 1 / (num["winding_ohm"] * (1 + self.k["alpha_copper"] * dt) + num["brush_ohm"])
                emf = num["motor_k"] * (1 + self.k["alpha_ferrite"] * dt) * y[self.at["speed", part]]
            elif p["is"] == "lamp":
                hot = num["rated_v"] ** 2 / num["rated_w"]
                g = 1 / (hot * (y[self.at["filament", part]] / self.k["filament_rated_k"]) ** 1.2)
            elif p["is"] in ("sensor_upper", "sensor_lower"):
                kpa = (self.p_atm - self.inside[p["id"]]) * 1e-3 + num["drift_kpa"]
                share = num["zero_share"] + num["span_share"] * kpa / 100
                share = ca.fmin(ca.fmax(share, self.k["sensor_rail"]), 1 - self.k["sensor_rail"])
                g = 1 / (num["track_ohm"] * (share if p["is"] == "sensor_lower" else 1 - share))
            elif p["ohm"] is None:
                g = 0
            else:
                g = 1 / p["ohm"]
            if p["is"] == "battery":
                z = y[self.at["charge", part]]
                line = BATTERY_V[0] * ca.fmax(1 + ca.fmin(z, 0) / 0.1, 0)
                for lo, hi, z0 in zip(BATTERY_V, BATTERY_V[1:], (0, 0.25, 0.5, 0.75)):
                    line += (hi - lo) * ca.fmin(ca.fmax((z - z0) / 0.25, 0), 1)
                emf = line
            if p["needs"]:
                on = {"closed": lambda: self.told[f"closed{part}"],
                      "whole": lambda: 1 - self.told[f"melted{part}"],
                      "key": lambda: self.told["key"], "engine": lambda: self.told["engine"],
                      "awake": lambda: self.told[f"awake{part}"],
                      "pressed": lambda: self.told[f"pressed{part}"] * (1 - self.told[f"melted{part}"])}
                g = g * on[p["needs"]]()
            g = g + p["weld_s"]
            a, b = p["a"] - 1, p["b"] - 1
            for node, sign in ((a, 1), (b, -1)):
                if node >= 0:
                    g_matrix[node, node] += g
                    rhs[node] += sign * g * emf
            if a >= 0 and b >= 0:
                g_matrix[a, b] -= g
                g_matrix[b, a] -= g
            poles.append((p, g, emf))
        d, lt, perm = ca.ldl(g_matrix)
        v = ca.vertcat(0, ca.ldl_solve(rhs, d, lt, perm))
        return [(p, v[p["a"]] - v[p["b"]], g, g * (v[p["a"]] - v[p["b"]] - emf)) for p, g, emf in poles]

    # ---- all of it --------------------------------------------------------------------------------

    def _build(self):
        c, k, at = self.c, self.k, self.at
        x = ca.SX.sym("x", self.n)
        p = ca.SX.sym("p", len(self.told_names))
        self.told = {name: p[i] for i, name in enumerate(self.told_names)}
        y = self.y = [x[i] * self.scale[i] for i in range(self.n)]
        f = [ca.SX(0) for _ in range(self.n)]
        t0 = y[at["surroundings", None]]
        gas, m3 = [], []
        for v in c["volumes"]:
            m, u = y[v["mass"]], y[v["mass"] + 1]
            vol = v["m3"] + (0 if v["travel"] is None else v["per_travel_m2"] * y[v["travel"]])
            m3.append(vol)
            gas.append(((k["gamma"] - 1) * u / vol, u / (m * k["cv"])))

        def air(end):
            if end == "atmosphere":
                return self.p_atm, t0
            if "volume" in end:
                return gas[end["volume"]]
            return y[end["manifold"]], t0

        for e in c["edges"]:
            a, b = air(e["a"]), air(e["b"])
            m = self.flow(e["law"], a, b, e.get("soft"))
            h = k["cp"] * ca.if_else(m >= 0, a[1], b[1]) * m
            for end, sign in ((e["a"], -1), (e["b"], 1)):
                if end != "atmosphere" and "volume" in end:
                    i = c["volumes"][end["volume"]]["mass"]
                    f[i] += sign * m
                    f[i + 1] += sign * h
        for v, (_, t) in zip(c["volumes"], gas):
            f[v["mass"] + 1] += v["w_per_k"] * (t0 - t)

        self.inside = {v["name"]: g[0] for v, g in zip(c["volumes"], gas)}
        poles = self.wiring()
        volume = {v["name"]: j for j, v in enumerate(c["volumes"])}
        currents = []
        for part, (kind, num, machine) in self.machines.items():
            i_of = next(((v, g, i) for q, v, g, i in poles if q["part"] == part), None)
            if kind == "Booster":
                jf, jr = volume[machine["id"] + ".front"], volume[machine["id"] + ".rear"]
                xi = at["travel", part]
                tr, area = y[xi], num["area_cm2"] * 1e-4
                spring = num["spring_n"] + ca.if_else(tr < 0, k["stop_n_per_m"], num["spring_n_per_m"]) * tr
                end = k["stop_n_per_m"] * ca.fmax(tr - 0.92 * num["front_l"] * 1e-3 / area, 0)
                force = (self.told["pedal"] * num["pedal_ratio"] + area * (gas[jr][0] - gas[jf][0])
                         - spring - self.brake_force(num, tr) - end)
                over = ca.fmax(ca.fabs(force) - num["drag_n"], 0)
                if num["drag_n"] > 0:
                    force = ca.sign(force) * over**2 / (over + k["unsticks_n"])
                speed = force / (num["damping_kns_per_m"] * 1e3)
                f[xi] += speed
                f[c["volumes"][jf]["mass"] + 1] += gas[jf][0] * area * speed
                f[c["volumes"][jr]["mass"] + 1] -= gas[jr][0] * area * speed
            elif kind == "VacuumPump":
                _, g, i = i_of
                w, tw, tc = (y[at[s, part]] for s in ("speed", "winding", "case"))
                swept = num["displacement_cm3"] * 1e-6 / (2 * np.pi)
                vr, ga = num["volume_ratio"], k["gamma"]
                p1 = gas[volume[machine["id"]]][0]
                compression = swept * (p1 * ((vr ** (ga - 1) - 1) / (ga - 1) - 1) + self.p_atm / vr)
                load = compression * ca.tanh(w / k["omega_load_small"])
                friction = ((num["friction_nm"] + num["drag_nm"]) * ca.tanh(w / k["omega_friction_small"])
                            + num["viscous_mnms"] * 1e-3 * w)
                km = num["motor_k"] * (1 + k["alpha_ferrite"] * (tw - 293.15))
                f[at["speed", part]] += (km * i - load - friction) / (num["inertia_kgcm2"] * 1e-4)
                across = num["winding_w_per_k"] * (tw - tc)
                f[at["winding", part]] += (i * i / g - across) / num["winding_j_per_k"]
                f[at["case", part]] += (friction * w + 0.5 * load * w + across
                                        - num["case_w_per_k"] * (tc - t0)) / num["case_j_per_k"]
                currents.append(i)
            elif kind == "Engine":
                f[at["manifold", part]] += (self.told[f"target{part}"] - y[at["manifold", part]]) / num["lag_s"]
            elif kind == "EnginePump":
                f[at["speed", part]] += (self.told[f"speed{part}"] - y[at["speed", part]]) / num["lag_s"]
            elif kind == "Controller":
                on, r = self.told[f"closed{part}"], y[at["run_time", part]]
                f[at["run_time", part]] += on - (1 - on) * r / num["rest_tau_s"]
            elif kind == "Battery":
                z, i = y[at["charge", part]], i_of[2]
                takes = ca.if_else(i > 0, ca.fmin(ca.fmax((1 - z) / 0.05, 0), 1), 1)
                f[at["charge", part]] += takes * i / (num["capacity_ah"] * 3600)
            elif kind in ("VacuumGauge", "HandPump") and ("pointer", part) in at:
                pg = gas[volume[machine["id"]]][0] - self.p_atm
                f[at["pointer", part]] += (pg - y[at["pointer", part]]) / num["lag_s"]
            elif kind == "TestLamp" and ("filament", part) in at:
                v, g, _ = i_of
                t, tr = y[at["filament", part]], k["filament_rated_k"]
                radiated = num["rated_w"] * (t**4 - t0**4) / tr**4
                f[at["filament", part]] += (v * v * g - radiated) / (num["rated_w"] * 0.06 / tr * 2)
            if ("fuse_heat", part) in at:
                load = i_of[2] / machine["fuse_a"]
                heat = y[at["fuse_heat", part]]
                f[at["fuse_heat", part]] += (load**2 - heat) / k["fuse_tau_s"]
        f[at["surroundings", None]] += (self.told["room"] - t0) / k["room_tau_s"]

        self.x, self.p = x, p
        self.ode = ca.vertcat(*f) / ca.DM(self.scale)
        pressures = ca.vertcat(*[g[0] for g in gas]) * 1e-3
        rates = ca.jacobian(pressures, x) @ self.ode
        travel = ca.vertcat(*[self.ode[i] * self.scale[i] for (s, _), i in at.items() if s == "travel"])
        self.read = ca.Function("read", [x, p], [pressures, ca.vertcat(*currents), rates, travel])
        self.f = ca.Function("f", [x, p], [self.ode])
