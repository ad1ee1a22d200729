package rigid

import "math/rand/v2"

// Noise returns a copy of the readings with normal noise of standard deviation
// sigma added to each. The same seed gives the same noise.
func Noise(seed uint64, sigma float64, readings []float64) []float64 {
	random := rand.New(rand.NewPCG(seed, 0))
	noisy := make([]float64, len(readings))
	for n, r := range readings {
		noisy[n] = r + float64(sigma*random.NormFloat64())
	}
	return noisy
}
