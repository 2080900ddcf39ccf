module silowright

go 1.26
