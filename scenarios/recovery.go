// This file holds what a case should give back, so that a study can tell when the model or the case strays from experience.

package scenarios

// Recovery is how large a share of the red cells that left the patient steady gives back where no swabs are rinsed. Published
// for whole cases: a mean of 57 % and 60 % modelled ([S] Waters, Lee & Karafa, Anesth Analg 2002;95:1312–1317); the band
// usual for an ordinary case is 0.05 wider at the bottom and 0.08 at the top [A].
type Recovery struct {
	Least float64 `yaml:"least" rule:"min=0,max=1,default=0.5" doc:"least share of the red cells that come back without rinsing swabs, on the mean of many draws"`
	Most  float64 `yaml:"most" rule:"min=0,max=1,default=0.68" doc:"greatest such share"`
	Why   string  `yaml:"why" rule:"max=400" doc:"why this case gives back less or more than an ordinary one" example:"Much runs into the discard while amniotic fluid is about."`
}

const (
	usualRecoveryLeast = 0.5
	usualRecoveryMost  = 0.68
)

// recovery checks the band, and that one of its own has a reason.
func (c *checker) recovery() {
	r := &c.f.Recovery
	if !c.sound("recovery", "recovery.least", "recovery.most", "recovery.why") {
		return
	}
	if r.Least > r.Most {
		c.Fault("recovery.most", "this is less than the least share", "more than recovery.least, or equal to it")
	}
	if (r.Least != usualRecoveryLeast || r.Most != usualRecoveryMost) && r.Why == "" {
		c.Fault("recovery", "this case is said to give back less or more than an ordinary one, and not why", "why: the reason")
	}
}
