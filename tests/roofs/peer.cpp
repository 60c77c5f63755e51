// The peer of our roofs at one pitch: the straight skeleton of CGAL, its predicates exact.
//
// Reads from stdin: rounds, then for each outline its number of corners and x y of each, counter-clockwise.
// Writes a line for each outline: the median time of one skeleton in milliseconds, then the area in plan of
// the face at each leg, leg by leg.
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>
#include <CGAL/create_straight_skeleton_2.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Outline = CGAL::Polygon_2<Kernel>;

int main() {
    int rounds = 0;
    if (std::scanf("%d", &rounds) != 1 || rounds < 1) return 1;
    int corners = 0;
    while (std::scanf("%d", &corners) == 1) {
        Outline outline;
        for (int k = 0; k < corners; ++k) {
            double x = 0, y = 0;
            if (std::scanf("%lf %lf", &x, &y) != 2) return 1;
            outline.push_back(Kernel::Point_2(x, y));
        }
        std::vector<double> times;
        std::vector<double> areas;
        for (int round = 0; round < rounds; ++round) {
            const auto start = std::chrono::steady_clock::now();
            const auto skeleton = CGAL::create_interior_straight_skeleton_2(outline);
            const auto end = std::chrono::steady_clock::now();
            times.push_back(std::chrono::duration<double, std::milli>(end - start).count());
            if (!skeleton) return 2;
            if (round > 0) continue;
            areas.assign(corners, 0.0);
            for (auto face = skeleton->faces_begin(); face != skeleton->faces_end(); ++face) {
                Outline ring;
                const auto first = face->halfedge();
                auto side = first;
                int leg = -1;
                do {
                    const auto at = side->vertex()->point();
                    ring.push_back(at);
                    if (!side->is_bisector()) {
                        const auto from = side->opposite()->vertex()->point();
                        for (int k = 0; k < corners; ++k)
                            if (outline[k] == from && outline[(k + 1) % corners] == at) leg = k;
                    }
                    side = side->next();
                } while (side != first);
                if (leg < 0) return 3;
                areas[leg] += CGAL::to_double(ring.area());
            }
        }
        std::nth_element(times.begin(), times.begin() + times.size() / 2, times.end());
        std::printf("%.9f", times[times.size() / 2]);
        for (const double area : areas) std::printf(" %.9f", area);
        std::printf("\n");
    }
    return 0;
}
